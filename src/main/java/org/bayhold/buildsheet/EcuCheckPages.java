package org.bayhold.buildsheet;

import java.util.List;
import java.util.UUID;
import org.bayhold.identity.Act;
import org.bayhold.identity.Call;
import org.bayhold.identity.Caller;
import org.bayhold.identity.Needs;
import org.bayhold.obd.TroubleCode;
import org.bayhold.page.Form;
import org.bayhold.refusal.Refusal;
import org.jspecify.annotations.Nullable;
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
    private final CodeWords codeWords;

    EcuCheckPages(CarForms carForms, RecordFacts facts, ReadBackRecorder readBacks, CodeWords codeWords) {
        this.carForms = carForms;
        this.facts = facts;
        this.readBacks = readBacks;
        this.codeWords = codeWords;
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
                    codes(form),
                    Fact.Source.SHOP,
                    carForms.moment(form, id),
                    form.text("performedBy"),
                    form.text("note"));
            form.check(request);
            try {
                ReadBackView check = facts.record(call, id, readBacks, request).value();
                CarForms.warn(form, check.warnings());
                codeWords
                        .of(check.troubleCodes(), check.readiness())
                        .forEach(told -> form.say("said.ecu-check.told", told));
                return form.done(CarForms.path(id), said(check));
            } catch (Refusal refusal) {
                throw CarForms.named(refusal);
            }
        });
        return carForms.of(page, call.caller(), id, form);
    }

    /** An empty field says nothing; that there are none is ticked. */
    private static @Nullable List<String> codes(Form form) {
        String typed = form.text("troubleCodes");
        boolean none = form.checked("noTroubleCodes");
        if (typed == null) {
            return none ? List.of() : null;
        }
        List<String> codes = List.of(typed.split("[\\s,;]+", -1)).stream()
                .filter(code -> !code.isEmpty())
                .toList();
        if (none) {
            form.refused(Refusal.invalid("troubleCodes", "read-back.codes-and-none"));
        } else if (!codes.stream().allMatch(code -> code.matches(TroubleCode.FORM))) {
            form.refused(Refusal.invalid("troubleCodes", "read-back.code-form"));
        }
        return codes;
    }

    private static String said(ReadBackView check) {
        if (check.matches() == null) {
            return "said.ecu-check.unknown";
        }
        return check.matches() ? "said.ecu-check.matches" : "said.ecu-check.differs";
    }
}
