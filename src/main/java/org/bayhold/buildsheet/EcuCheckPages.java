package org.bayhold.buildsheet;

import jakarta.servlet.http.HttpServletResponse;
import java.util.UUID;
import org.bayhold.form.Typed;
import org.bayhold.identity.Act;
import org.bayhold.identity.Call;
import org.bayhold.identity.Caller;
import org.bayhold.identity.Needs;
import org.bayhold.refusal.Refusal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** <i>ECU check</i>: CALID and CVN, the hash of the file that was read out, or the raw answers. */
@Controller
class EcuCheckPages {
    private static final String VIEW = "buildsheet/ecu-check";

    private final CarForms carForms;
    private final RecordFacts facts;
    private final ReadBackRecorder readBacks;

    EcuCheckPages(CarForms carForms, RecordFacts facts, ReadBackRecorder readBacks) {
        this.carForms = carForms;
        this.facts = facts;
        this.readBacks = readBacks;
    }

    @Needs(Act.FLASH_AND_READ_BACK)
    @GetMapping("/cars/{id}/ecu-check")
    String form(Caller caller, @PathVariable UUID id, Model model) {
        carForms.show(model, caller, id, EcuCheckForm.EMPTY);
        return VIEW;
    }

    @Needs(Act.FLASH_AND_READ_BACK)
    @PostMapping("/cars/{id}/ecu-check")
    String record(
            Call call,
            @PathVariable UUID id,
            @ModelAttribute EcuCheckForm form,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        carForms.show(model, call.caller(), id, form);
        try {
            Typed typed = carForms.read();
            ReadBackRequest request = new ReadBackRequest(
                    typed.text("calid", form.calid()),
                    typed.text("cvn", form.cvn()),
                    typed.text("fileSha256", form.fileSha256()),
                    typed.text("response", form.response()),
                    Fact.Source.SHOP,
                    carForms.moment(typed, model, id, form.when(), form.order()).at(),
                    typed.text("performedBy", form.performedBy()),
                    typed.text("note", form.note()));
            typed.check(request, "");
            typed.done();
            ReadBackView check = facts.record(call, id, readBacks, request).value();
            return CarForms.toCar(id, redirect, said(check), String.valueOf(check.calid()));
        } catch (Refusal refusal) {
            return carForms.again(refusal, model, response, VIEW);
        }
    }

    private static String said(ReadBackView check) {
        if (check.warnings().contains("CVN_IS_THE_FACTORYS")) {
            return "said.ecu-check.factory-cvn";
        }
        return check.matches() == null
                ? "said.ecu-check.unknown"
                : check.matches() ? "said.ecu-check.matches" : "said.ecu-check.differs";
    }
}
