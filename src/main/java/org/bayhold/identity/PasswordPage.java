package org.bayhold.identity;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import org.bayhold.page.Form;
import org.bayhold.refusal.Refusal;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.servlet.ModelAndView;

/** One's own password. */
@Controller
class PasswordPage {
    private static final String VIEW = "identity/password";

    private final People people;
    private final Signatures signatures;

    PasswordPage(People people, Signatures signatures) {
        this.people = people;
        this.signatures = signatures;
    }

    @ForEverybody
    @GetMapping("/password")
    ModelAndView form(Caller caller, Form form) {
        return form.show(VIEW).addObject("name", caller.username());
    }

    /** The present password signs for the new one; this session goes on, any other of the person ends. */
    @ForEverybody
    @PostMapping("/password")
    ModelAndView change(Call call, Form form, HttpServletRequest request, HttpServletResponse response) {
        ModelAndView page = form.submit(VIEW, () -> {
            String password = form.secret("newPassword");
            if (!password.equals(form.secret("passwordAgain"))) {
                throw Refusal.invalid("passwordAgain", "password.not-the-same");
            }
            Call signed = signatures.sign(call, form.secret("password"));
            try {
                people.setPassword(signed, call.caller().userId(), password);
            } catch (Refusal refusal) {
                throw refusal.renamed(field -> field.equals("password") ? "newPassword" : field);
            }
            signatures.renew(call.caller().username(), password, request, response);
            return form.done("/password", "password.changed");
        });
        return page.addObject("name", call.caller().username());
    }
}
