package org.bayhold.gate;

import jakarta.servlet.http.HttpServletResponse;
import java.util.UUID;
import org.bayhold.buildsheet.Fact;
import org.bayhold.form.Forms;
import org.bayhold.form.Typed;
import org.bayhold.identity.Act;
import org.bayhold.identity.Call;
import org.bayhold.identity.Caller;
import org.bayhold.identity.Needs;
import org.bayhold.identity.Signatures;
import org.bayhold.refusal.Code;
import org.bayhold.refusal.Refusal;
import org.bayhold.vehicle.Vehicles;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** <i>Hand over</i>: the gate with every reason, the handover of a car that is CLEAR, a manager's exception. */
@Controller
class HandOverPages {
    private static final String VIEW = "gate/hand-over";

    private final Decisions decisions;
    private final DecisionViews views;
    private final Handoffs handoffs;
    private final Vehicles vehicles;
    private final Forms forms;
    private final Signatures signatures;

    HandOverPages(
            Decisions decisions,
            DecisionViews views,
            Handoffs handoffs,
            Vehicles vehicles,
            Forms forms,
            Signatures signatures) {
        this.decisions = decisions;
        this.views = views;
        this.handoffs = handoffs;
        this.vehicles = vehicles;
        this.forms = forms;
        this.signatures = signatures;
    }

    /** Everybody may look; who may do what shows in the page. */
    @Needs(Act.READ)
    @GetMapping("/cars/{id}/hand-over")
    String form(Caller caller, @PathVariable UUID id, Model model) {
        show(caller, id, HandOverForm.EMPTY, model);
        return VIEW;
    }

    @Needs(Act.HAND_OVER)
    @PostMapping("/cars/{id}/hand-over")
    String handOver(
            Call call,
            @PathVariable UUID id,
            @ModelAttribute HandOverForm form,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        try {
            Typed typed = forms.read();
            HandoffRequest request = new HandoffRequest(null, typed.whole("odometerKm", form.odometerKm()), null);
            typed.check(request, "");
            typed.done();
            return done(handoffs.handOver(call, id, request), redirect);
        } catch (Refusal refusal) {
            return again(call.caller(), id, form, refusal, model, response);
        }
    }

    @Needs(Act.RELEASE_BY_EXCEPTION)
    @PostMapping("/cars/{id}/release")
    String release(
            Call call,
            @PathVariable UUID id,
            @ModelAttribute HandOverForm form,
            @RequestParam(required = false) @Nullable String password,
            @RequestParam(required = false) @Nullable String secondPassword,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        try {
            Typed typed = forms.read();
            String reason = typed.needed("reason", form.reason());
            if (form.travel() == null || form.travel().isBlank()) {
                typed.wrong("travel", "form.choose");
            }
            HandoffRequest.ExceptionRequest exception = new HandoffRequest.ExceptionRequest(
                    reason,
                    typed.choice("travel", form.travel(), Fact.Travel.class, Fact.Travel.TRAILER),
                    typed.needed("acknowledgedBy", form.acknowledgedBy()),
                    typed.text("limitations", form.limitations()),
                    typed.time("returnBy", form.returnBy()),
                    null);
            typed.check(exception, "");
            HandoffRequest request = new HandoffRequest(
                    typed.time("when", form.when()), typed.whole("odometerKm", form.odometerKm()), exception);
            typed.done();
            Caller second = signatures.second(form.secondName(), secondPassword);
            return done(handoffs.handOver(signatures.signed(call, password), id, request, second), redirect);
        } catch (Refusal refusal) {
            return again(call.caller(), id, form, refusal, model, response);
        }
    }

    /** Handed over: on to the certificate's page. A refusal was recorded by now and is shown like any other. */
    private static String done(Handoffs.Result result, RedirectAttributes redirect) {
        HandoffView handoff = result.handoff();
        if (handoff == null) {
            throw Refusal.of(Code.GATE_HOLD, "problem.gate-hold");
        }
        redirect.addFlashAttribute("said", "said.handed-over." + handoff.basis());
        redirect.addFlashAttribute("certificateOf", handoff.id());
        return "redirect:/cars/" + handoff.vehicleId() + "/hand-over";
    }

    private String again(
            Caller caller, UUID id, HandOverForm form, Refusal refusal, Model model, HttpServletResponse response) {
        if (refusal.code() == Code.NOT_FOUND || refusal.code() == Code.FORBIDDEN) {
            throw refusal;
        }
        show(caller, id, form, model);
        forms.refuse(named(refusal), model, response);
        return VIEW;
    }

    private static Refusal named(Refusal refusal) {
        return new Refusal(
                refusal.code(),
                refusal.reasons().stream()
                        .map(reason -> new Refusal.Reason(field(reason.field()), reason.key(), reason.arguments()))
                        .toList());
    }

    private static @Nullable String field(@Nullable String field) {
        if (field == null || field.equals("exception")) {
            return null;
        }
        if (field.equals("exception.secondSignerToken")) {
            return "secondPassword";
        }
        return field.equals("effectiveAt") ? "when" : field.replace("exception.", "");
    }

    private void show(Caller caller, UUID id, HandOverForm form, Model model) {
        Decision decision = decisions.of(id, null, null);
        Forms.fresh(model);
        model.addAttribute("car", vehicles.view(id, caller).orElseThrow(() -> Refusal.notFound("vehicle.not-found")));
        model.addAttribute("form", form);
        model.addAttribute("gate", views.view(decision));
        decision.car().openItem().ifPresent(item -> model.addAttribute("itemId", item.id()));
        model.addAttribute("lastHandoff", decision.car().stay().inShop() ? null : last(decision));
        model.addAttribute("inShop", decision.car().stay().inShop());
        model.addAttribute("mayHandOver", caller.may(Act.HAND_OVER));
        model.addAttribute("mayRelease", caller.may(Act.RELEASE_BY_EXCEPTION));
        model.addAttribute("travels", Fact.Travel.values());
    }

    private static @Nullable UUID last(Decision decision) {
        return decision.car().handoffs().stream()
                .reduce((earlier, later) -> later)
                .map(handoff -> handoff.stamp().id())
                .orElse(null);
    }
}
