package org.bayhold.buildsheet;

import jakarta.servlet.http.HttpServletResponse;
import java.util.UUID;
import org.bayhold.form.Typed;
import org.bayhold.identity.Act;
import org.bayhold.identity.Call;
import org.bayhold.identity.Caller;
import org.bayhold.identity.Needs;
import org.bayhold.journal.Journal;
import org.bayhold.refusal.Refusal;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** <i>Strike out</i>: a wrong record stays to be read, and counts no more. */
@Controller
class StrikeOutPages {
    private static final String VIEW = "buildsheet/strike-out";

    private final CarForms carForms;
    private final Voidings voidings;
    private final Journal journal;
    private final Histories histories;

    StrikeOutPages(CarForms carForms, Voidings voidings, Journal journal, Histories histories) {
        this.carForms = carForms;
        this.voidings = voidings;
        this.journal = journal;
        this.histories = histories;
    }

    /** A striking-out as typed. */
    record StrikeOutForm(@Nullable String reason) {}

    @Needs(Act.STRIKE_OUT)
    @GetMapping("/records/{id}/strike-out")
    String form(Caller caller, @PathVariable UUID id, Model model) {
        UUID ignored = show(caller, id, new StrikeOutForm(null), model);
        return VIEW;
    }

    @Needs(Act.STRIKE_OUT)
    @PostMapping("/records/{id}/strike-out")
    String strikeOut(
            Call call,
            @PathVariable UUID id,
            @ModelAttribute StrikeOutForm form,
            @RequestParam(required = false) @Nullable String password,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        UUID vehicleId = show(call.caller(), id, form, model);
        try {
            Typed typed = carForms.read();
            String reason = typed.needed("reason", form.reason());
            typed.check(new CarFactsController.VoidingRequest(reason, null), "");
            typed.done();
            VoidingView view = voidings.strikeOut(carForms.signed(call, password), id, reason, null)
                    .value();
            return CarForms.toCar(
                    vehicleId, redirect, view.retuneItemId() == null ? "said.struck-out" : "said.struck-out.holds");
        } catch (Refusal refusal) {
            return carForms.again(refusal, model, response, VIEW);
        }
    }

    private UUID show(Caller caller, UUID id, StrikeOutForm form, Model model) {
        UUID vehicleId = journal.chainOf(id).orElseThrow(() -> Refusal.notFound("record.not-found"));
        carForms.show(model, caller, vehicleId, form);
        model.addAttribute(
                "record",
                histories.of(vehicleId, java.time.Instant.MAX, caller).stream()
                        .filter(view -> view.id().equals(id))
                        .findFirst()
                        .orElseThrow(() -> Refusal.notFound("record.not-found")));
        return vehicleId;
    }
}
