package org.bayhold.buildsheet;

import java.time.Instant;
import java.util.UUID;
import org.bayhold.identity.Act;
import org.bayhold.identity.Call;
import org.bayhold.identity.Caller;
import org.bayhold.identity.Needs;
import org.bayhold.identity.Signatures;
import org.bayhold.journal.Journal;
import org.bayhold.page.Form;
import org.bayhold.refusal.Refusal;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.servlet.ModelAndView;
import tools.jackson.databind.JsonNode;

/** <i>Strike out</i>: a wrong record stays to be read, and counts no more. */
@Controller
class StrikeOutPages {
    private static final String VIEW = "buildsheet/strike-out";

    private final CarForms carForms;
    private final Voidings voidings;
    private final Journal journal;
    private final Histories histories;
    private final Signatures signatures;
    private final Replacements replacements;

    StrikeOutPages(
            CarForms carForms,
            Voidings voidings,
            Journal journal,
            Histories histories,
            Signatures signatures,
            Replacements replacements) {
        this.replacements = replacements;
        this.carForms = carForms;
        this.voidings = voidings;
        this.journal = journal;
        this.histories = histories;
        this.signatures = signatures;
    }

    @Needs(Act.STRIKE_OUT)
    @GetMapping("/records/{id}/strike-out")
    ModelAndView form(Caller caller, @PathVariable UUID id, Form form) {
        return page(form.show(VIEW), caller, id, form);
    }

    @Needs(Act.STRIKE_OUT)
    @PostMapping("/records/{id}/strike-out")
    ModelAndView strikeOut(Call call, @PathVariable UUID id, Form form) {
        ModelAndView page = form.submit(VIEW, () -> {
            String reason = form.required("reason");
            boolean replaces = form.checked("replace");
            JsonNode right = replaces ? replacements.read(record(call.caller(), id), form) : null;
            form.check(new CarFactsController.VoidingRequest(reason, null));
            Call signed = signatures.sign(call, form.secret("password"));
            VoidingView view = struckOut(signed, id, reason, right);
            if (replaces) {
                form.say("said.replaced");
            }
            return form.done(
                    CarForms.path(view.vehicleId()),
                    view.retuneItemId() == null ? "said.struck-out" : "said.struck-out.holds");
        });
        return page(page, call.caller(), id, form);
    }

    private VoidingView struckOut(Call call, UUID id, String reason, @Nullable JsonNode right) {
        try {
            return voidings.strikeOut(call, id, reason, right).value();
        } catch (Refusal refusal) {
            throw right == null ? refusal : refusal.renamed(Replacements::ofPage);
        }
    }

    private HistoryView record(Caller caller, UUID id) {
        UUID vehicleId = journal.chainOf(id).orElseThrow(() -> Refusal.notFound("record.not-found"));
        return histories.of(vehicleId, Instant.MAX, caller).stream()
                .filter(view -> view.id().equals(id))
                .findFirst()
                .orElseThrow(() -> Refusal.notFound("record.not-found"));
    }

    private ModelAndView page(ModelAndView page, Caller caller, UUID id, Form form) {
        if (Form.leadsOn(page)) {
            return page;
        }
        UUID vehicleId = journal.chainOf(id).orElseThrow(() -> Refusal.notFound("record.not-found"));
        HistoryView record = record(caller, id);
        String ecuHardware = carForms.car(caller, vehicleId).ecuHardware();
        return carForms.of(page, caller, vehicleId, form)
                .addObject("record", record)
                .addObject("fields", replacements.fields(record, ecuHardware, form));
    }
}
