package org.bayhold.web;

import org.bayhold.identity.Act;
import org.bayhold.identity.Caller;
import org.bayhold.identity.ForEverybody;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;

/** Where people come in: the shop's day, or, for those without a say over cars, the users. */
@Controller
class HomePage {
    @ForEverybody
    @GetMapping("/")
    String home(Caller caller) {
        return caller.may(Act.READ) ? "forward:/today" : "redirect:/users";
    }
}
