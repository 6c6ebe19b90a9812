package org.bayhold.buildsheet;

import java.util.UUID;
import org.bayhold.identity.Act;
import org.bayhold.identity.Call;
import org.bayhold.identity.Caller;
import org.bayhold.identity.Needs;
import org.bayhold.page.Form;
import org.bayhold.refusal.Refusal;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.servlet.ModelAndView;

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
    ModelAndView form(Caller caller, @PathVariable UUID id, Form form) {
        return carForms.of(form.show(VIEW), caller, id, form);
    }

    @Needs(Act.FLASH_AND_READ_BACK)
    @PostMapping("/cars/{id}/ecu-check")
    ModelAndView record(Call call, @PathVariable UUID id, Form form) {
        ModelAndView page = form.submit(VIEW, () -> {
            ReadBackRequest request = new ReadBackRequest(
                    form.text("calid"),
                    form.text("cvn"),
                    form.text("fileSha256"),
                    form.text("response"),
                    Fact.Source.SHOP,
                    carForms.moment(form, id),
                    form.text("performedBy"),
                    form.text("note"));
            form.check(request);
            try {
                ReadBackView check = facts.record(call, id, readBacks, request).value();
                CarForms.warn(form, check.warnings());
                return form.done(CarForms.path(id), said(check));
            } catch (Refusal refusal) {
                throw CarForms.named(refusal);
            }
        });
        return carForms.of(page, call.caller(), id, form);
    }

    private static String said(ReadBackView check) {
        if (check.matches() == null) {
            return "said.ecu-check.unknown";
        }
        return check.matches() ? "said.ecu-check.matches" : "said.ecu-check.differs";
    }
}
