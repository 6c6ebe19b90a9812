package org.bayhold.form;

import jakarta.servlet.http.HttpServletResponse;
import jakarta.validation.Validator;
import org.bayhold.refusal.Code;
import org.bayhold.refusal.Problems;
import org.bayhold.refusal.Refusal;
import org.springframework.stereotype.Component;
import org.springframework.ui.Model;

/** Reads forms, and shows them again when they were refused. */
@Component
public class Forms {
    private final ShopTime times;
    private final Validator validator;
    private final Problems problems;

    Forms(ShopTime times, Validator validator, Problems problems) {
        this.times = times;
        this.validator = validator;
        this.problems = problems;
    }

    public Typed read() {
        return new Typed(times, validator);
    }

    /** Nothing is wrong yet. */
    public static void fresh(Model model) {
        model.addAttribute("wrong", Wrong.NOTHING);
    }

    /** Puts the sentences at the fields; the page is answered with the refusal's status, an invalid form with 422. */
    public void refuse(Refusal refusal, Model model, HttpServletResponse response) {
        Problems.retryAfter(refusal.code(), response);
        response.setStatus(refusal.code() == Code.INVALID ? 422 : refusal.code().status());
        model.addAttribute("wrong", Wrong.of(refusal, problems));
    }
}
