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

/** What happens at the counter: the car came in, and the customer acknowledges the risk and the use. */
@Controller
class CounterPages {
    private static final String ARRIVED = "buildsheet/arrived";
    private static final String ACKNOWLEDGE = "buildsheet/acknowledge";

    private final CarForms carForms;
    private final RecordFacts facts;
    private final ArrivalRecorder arrivals;
    private final AcknowledgementRecorder acknowledgements;

    CounterPages(
            CarForms carForms, RecordFacts facts, ArrivalRecorder arrivals, AcknowledgementRecorder acknowledgements) {
        this.carForms = carForms;
        this.facts = facts;
        this.arrivals = arrivals;
        this.acknowledgements = acknowledgements;
    }

    @Needs(Act.RECORD_ON_CAR)
    @GetMapping("/cars/{id}/arrived")
    ModelAndView arrivedForm(Caller caller, @PathVariable UUID id, Form form) {
        return carForms.of(form.show(ARRIVED), caller, id, form);
    }

    @Needs(Act.RECORD_ON_CAR)
    @PostMapping("/cars/{id}/arrived")
    ModelAndView arrived(Call call, @PathVariable UUID id, Form form) {
        ModelAndView page = form.submit(ARRIVED, () -> {
            ArrivalRequest request =
                    new ArrivalRequest(carForms.moment(form, id), form.integer("odometerKm"), form.text("note"));
            form.check(request);
            try {
                ArrivalView arrival = facts.record(call, id, arrivals, request).value();
                CarForms.warn(form, arrival.warnings());
                return form.done(CarForms.path(id), "said.arrived");
            } catch (Refusal refusal) {
                throw CarForms.named(refusal);
            }
        });
        return carForms.of(page, call.caller(), id, form);
    }

    /** Usually the owner signs, and the car is driven on the street. */
    @Needs(Act.RECORD_ON_CAR)
    @GetMapping("/cars/{id}/acknowledge")
    ModelAndView acknowledgeForm(Caller caller, @PathVariable UUID id, Form form) {
        Form filled = form.with("usage", Fact.Usage.STREET)
                .with("signedBy", carForms.car(caller, id).customer().name());
        return carForms.of(filled.show(ACKNOWLEDGE), caller, id, form).addObject("usages", Fact.Usage.values());
    }

    @Needs(Act.RECORD_ON_CAR)
    @PostMapping("/cars/{id}/acknowledge")
    ModelAndView acknowledge(Call call, @PathVariable UUID id, Form form) {
        ModelAndView page = form.submit(ACKNOWLEDGE, () -> {
            Fact.Usage usage = form.choice("usage", Fact.Usage.class);
            if (usage == null) {
                form.refused(Refusal.invalid("usage", "form.choice"));
            }
            AcknowledgementRequest request = new AcknowledgementRequest(
                    form.text("text"), usage == null ? Fact.Usage.STREET : usage, form.required("signedBy"), null);
            form.check(request);
            AcknowledgementView recorded =
                    facts.record(call, id, acknowledgements, request).value();
            return form.done(CarForms.path(recorded.vehicleId()), "said.acknowledged");
        });
        return Form.leadsOn(page)
                ? page
                : carForms.of(page, call.caller(), id, form).addObject("usages", Fact.Usage.values());
    }
}
