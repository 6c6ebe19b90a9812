package org.bayhold.identity;

import org.bayhold.page.Form;
import org.bayhold.refusal.Refusal;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.servlet.ModelAndView;

/** The first administrator. */
@Controller
class SetUpPage {
    private static final String VIEW = "identity/set-up";

    private final SetUp setUp;

    SetUpPage(SetUp setUp) {
        this.setUp = setUp;
    }

    @ForEverybody
    @GetMapping("/set-up/{token}")
    ModelAndView form(@PathVariable String token, Form form) {
        refuseUnlessOpen(token);
        return form.show(VIEW);
    }

    @ForEverybody
    @PostMapping("/set-up/{token}")
    ModelAndView make(@PathVariable String token, Form form) {
        refuseUnlessOpen(token);
        return form.submit(VIEW, () -> {
            String password = form.secret("password");
            if (!password.equals(form.secret("passwordAgain"))) {
                throw Refusal.invalid("passwordAgain", "password.not-the-same");
            }
            setUp.makeAdministrator(token, form.required("username"), password);
            return new ModelAndView("redirect:/sign-in?ready");
        });
    }

    private void refuseUnlessOpen(String token) {
        if (!setUp.isOpenTo(token)) {
            throw Refusal.notFound("problem.not-found");
        }
    }
}
