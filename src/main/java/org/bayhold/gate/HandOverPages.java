package org.bayhold.gate;

import java.util.UUID;
import org.bayhold.buildsheet.CarState;
import org.bayhold.buildsheet.Fact;
import org.bayhold.identity.Act;
import org.bayhold.identity.Call;
import org.bayhold.identity.Caller;
import org.bayhold.identity.Needs;
import org.bayhold.identity.Signatures;
import org.bayhold.page.Form;
import org.bayhold.refusal.Code;
import org.bayhold.refusal.Refusal;
import org.bayhold.vehicle.VehicleView;
import org.bayhold.vehicle.Vehicles;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.servlet.ModelAndView;

/** <i>Hand over</i>: the gate with every reason, the handover of a car that is CLEAR, a manager's exception. */
@Controller
class HandOverPages {
    private static final String VIEW = "gate/hand-over";

    private final Decisions decisions;
    private final DecisionViews views;
    private final Handoffs handoffs;
    private final Vehicles vehicles;
    private final Signatures signatures;
    private final PredictionPages predictions;

    HandOverPages(
            Decisions decisions,
            DecisionViews views,
            Handoffs handoffs,
            Vehicles vehicles,
            Signatures signatures,
            PredictionPages predictions) {
        this.decisions = decisions;
        this.views = views;
        this.handoffs = handoffs;
        this.vehicles = vehicles;
        this.signatures = signatures;
        this.predictions = predictions;
    }

    /** Everybody may look; what a role may do shows in the page. */
    @Needs(Act.READ)
    @GetMapping("/cars/{id}/hand-over")
    ModelAndView form(Caller caller, @PathVariable UUID id, Form form) {
        return page(form.show(VIEW), caller, id, form);
    }

    @Needs(Act.HAND_OVER)
    @PostMapping("/cars/{id}/hand-over")
    ModelAndView handOver(Call call, @PathVariable UUID id, Form form) {
        ModelAndView page = form.submit(VIEW, () -> {
            HandoffRequest request = new HandoffRequest(null, form.integer("odometerKm"), null);
            form.check(request);
            return done(handoffs.handOver(call, id, request), form);
        });
        return page(page, call.caller(), id, form);
    }

    @Needs(Act.RELEASE_BY_EXCEPTION)
    @PostMapping("/cars/{id}/release")
    ModelAndView release(Call call, @PathVariable UUID id, Form form) {
        ModelAndView page = form.submit(VIEW, () -> {
            HandoffRequest request = exception(form);
            Call signed = signatures.sign(call, form.secret("password"));
            String secondName = form.text("secondName");
            Caller second = secondName == null
                    ? null
                    : signatures.second(secondName, form.secret("secondPassword"), "secondPassword");
            try {
                return done(handoffs.handOver(signed, id, request, second), form);
            } catch (Refusal refusal) {
                throw refusal.renamed(HandOverPages::ofPage);
            }
        });
        return page(page, call.caller(), id, form);
    }

    private static HandoffRequest exception(Form form) {
        Fact.Travel travel = form.choice("travel", Fact.Travel.class);
        if (travel == null && form.error("travel") == null) {
            form.refused(Refusal.invalid("travel", "form.choice"));
        }
        HandoffRequest.ExceptionRequest exception = new HandoffRequest.ExceptionRequest(
                form.required("reason"),
                travel == null ? Fact.Travel.TRAILER : travel,
                form.required("acknowledgedBy"),
                form.text("limitations"),
                form.time("returnBy"),
                null);
        HandoffRequest request = new HandoffRequest(form.time("when"), form.integer("odometerKm"), exception);
        form.check(exception);
        form.check(new HandoffRequest(null, request.odometerKm(), null));
        return request;
    }

    private static String ofPage(String field) {
        return switch (field) {
            case "effectiveAt" -> "when";
            case "exception", "exception.secondSignerToken" -> "secondPassword";
            default -> field.replace("exception.", "");
        };
    }

    /** A refusal was recorded by now and is shown like any other. */
    private static ModelAndView done(Handoffs.Result result, Form form) {
        HandoffView handoff = result.handoff();
        if (handoff == null) {
            throw Refusal.of(Code.GATE_HOLD, "problem.gate-hold");
        }
        return form.done("/cars/" + handoff.vehicleId() + "/hand-over", "said.handed-over." + handoff.basis());
    }

    private ModelAndView page(ModelAndView page, Caller caller, UUID id, Form form) {
        if (Form.leadsOn(page)) {
            return page;
        }
        Decision decision = decisions.of(id, null, null);
        VehicleView car = vehicles.view(id, caller).orElseThrow(() -> Refusal.notFound("vehicle.not-found"));
        form.with("acknowledgedBy", car.customer().name());
        UUID item = decision.car().openItem().map(CarState.OpenItem::id).orElse(null);
        return page.addObject("car", car)
                .addObject("gate", views.view(decision, caller.units()))
                .addObject(
                        "prediction", predictions.of(decision, caller.units()).orElse(null))
                .addObject("steps", NextStep.all(decision, item))
                .addObject("inShop", decision.car().stay().inShop())
                .addObject("leftBy", leftBy(decision))
                .addObject("travels", Fact.Travel.values());
    }

    /** The handover by which the car left, while it is out. */
    private static @Nullable UUID leftBy(Decision decision) {
        return decision.car().stay().inShop()
                ? null
                : decision.car().handoffs().stream()
                        .reduce((earlier, later) -> later)
                        .map(handoff -> handoff.stamp().id())
                        .orElse(null);
    }
}
