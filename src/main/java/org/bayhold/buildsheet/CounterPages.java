package org.bayhold.buildsheet;

import jakarta.servlet.http.HttpServletResponse;
import java.util.UUID;
import org.bayhold.form.Typed;
import org.bayhold.identity.Act;
import org.bayhold.identity.Call;
import org.bayhold.identity.Caller;
import org.bayhold.identity.Needs;
import org.bayhold.refusal.Refusal;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

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

    /** An arrival as typed. */
    record ArrivedForm(
            @Nullable String when,
            @Nullable String order,
            @Nullable String odometerKm,
            @Nullable String note) {
        static final ArrivedForm EMPTY = new ArrivedForm(null, null, null, null);
    }

    /** An acknowledgement as typed. */
    record AcknowledgeForm(
            @Nullable String usage,
            @Nullable String signedBy,
            @Nullable String text) {}

    @Needs(Act.RECORD_ON_CAR)
    @GetMapping("/cars/{id}/arrived")
    String arrivedForm(Caller caller, @PathVariable UUID id, Model model) {
        carForms.show(model, caller, id, ArrivedForm.EMPTY);
        return ARRIVED;
    }

    @Needs(Act.RECORD_ON_CAR)
    @PostMapping("/cars/{id}/arrived")
    String arrived(
            Call call,
            @PathVariable UUID id,
            @ModelAttribute ArrivedForm form,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        carForms.show(model, call.caller(), id, form);
        try {
            Typed typed = carForms.read();
            ArrivalRequest request = new ArrivalRequest(
                    carForms.moment(typed, model, id, form.when(), form.order()).at(),
                    typed.whole("odometerKm", form.odometerKm()),
                    typed.text("note", form.note()));
            typed.check(request, "");
            typed.done();
            ArrivalView arrival = facts.record(call, id, arrivals, request).value();
            return CarForms.toCar(
                    id,
                    redirect,
                    arrival.warnings().contains("ODOMETER_RAN_BACKWARDS") ? "said.arrived.odometer" : "said.arrived");
        } catch (Refusal refusal) {
            return carForms.again(refusal, model, response, ARRIVED);
        }
    }

    /** Usually the owner signs, and the car is driven on the street. */
    @Needs(Act.RECORD_ON_CAR)
    @GetMapping("/cars/{id}/acknowledge")
    String acknowledgeForm(Caller caller, @PathVariable UUID id, Model model) {
        String owner = carForms.owner(caller, id);
        carForms.show(model, caller, id, new AcknowledgeForm(Fact.Usage.STREET.name(), owner, null));
        model.addAttribute("usages", Fact.Usage.values());
        return ACKNOWLEDGE;
    }

    @Needs(Act.RECORD_ON_CAR)
    @PostMapping("/cars/{id}/acknowledge")
    String acknowledge(
            Call call,
            @PathVariable UUID id,
            @ModelAttribute AcknowledgeForm form,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        carForms.show(model, call.caller(), id, form);
        model.addAttribute("usages", Fact.Usage.values());
        try {
            Typed typed = carForms.read();
            AcknowledgementRequest request = new AcknowledgementRequest(
                    typed.text("text", form.text()),
                    typed.choice("usage", form.usage(), Fact.Usage.class, Fact.Usage.STREET),
                    typed.needed("signedBy", form.signedBy()),
                    null);
            typed.check(request, "");
            typed.done();
            AcknowledgementView ignored =
                    facts.record(call, id, acknowledgements, request).value();
            return CarForms.toCar(id, redirect, "said.acknowledged");
        } catch (Refusal refusal) {
            return carForms.again(refusal, model, response, ACKNOWLEDGE);
        }
    }
}
