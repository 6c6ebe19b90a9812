package org.bayhold.gate;

import jakarta.servlet.http.HttpServletResponse;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.bayhold.buildsheet.Fact;
import org.bayhold.form.Forms;
import org.bayhold.form.ShopTime;
import org.bayhold.form.Typed;
import org.bayhold.identity.Act;
import org.bayhold.identity.Call;
import org.bayhold.identity.Caller;
import org.bayhold.identity.Needs;
import org.bayhold.identity.Signatures;
import org.bayhold.refusal.Code;
import org.bayhold.refusal.Refusal;
import org.bayhold.vehicle.VehicleView;
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

/** <i>Retunes</i>: what is outstanding, who does it by when, and the sign-off. */
@Controller
class RetunePages {
    private static final String LIST = "gate/retunes";
    private static final String ONE = "gate/retune";

    private final RetuneItems items;
    private final PlanHistory planHistory;
    private final Vehicles vehicles;
    private final Forms forms;
    private final ShopTime times;
    private final Signatures signatures;

    RetunePages(
            RetuneItems items,
            PlanHistory planHistory,
            Vehicles vehicles,
            Forms forms,
            ShopTime times,
            Signatures signatures) {
        this.items = items;
        this.planHistory = planHistory;
        this.vehicles = vehicles;
        this.forms = forms;
        this.times = times;
        this.signatures = signatures;
    }

    /** An item with its car. */
    record Row(RetuneItemView item, @Nullable VehicleView car) {}

    /** Who does it, by when: as typed, with the version that it was typed over. */
    record PlanForm(
            @Nullable String version,
            @Nullable String assignee,
            @Nullable String promisedAt,
            @Nullable String note) {}

    /** A sign-off as typed. */
    record SignOffForm(@Nullable String basis, @Nullable String signOffNote) {
        static final SignOffForm EMPTY = new SignOffForm(null, null);
    }

    @Needs(Act.READ)
    @GetMapping("/retunes")
    String outstanding(Caller caller, Model model) {
        List<RetuneItemView> outstanding = items.outstanding();
        Map<UUID, VehicleView> cars = vehicles.views(
                outstanding.stream().map(RetuneItemView::vehicleId).toList(), caller);
        model.addAttribute(
                "rows",
                outstanding.stream()
                        .map(item -> new Row(item, cars.get(item.vehicleId())))
                        .toList());
        return LIST;
    }

    @Needs(Act.READ)
    @GetMapping("/retunes/{id}")
    String one(Caller caller, @PathVariable UUID id, Model model) {
        RetuneItemView item = show(caller, id, model);
        model.addAttribute("plan", planOf(item));
        return ONE;
    }

    @Needs(Act.PLAN_RETUNE)
    @PostMapping("/retunes/{id}/plan")
    String plan(
            Call call,
            @PathVariable UUID id,
            @ModelAttribute PlanForm plan,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        try {
            Typed typed = forms.read();
            Integer version = typed.whole("version", plan.version());
            PlanRequest request = new PlanRequest(
                    typed.text("assignee", plan.assignee()),
                    typed.time("promisedAt", plan.promisedAt()),
                    typed.text("note", plan.note()));
            typed.check(request, "");
            typed.done();
            RetuneItemView planned =
                    items.plan(call, id, Optional.of(version == null ? -1L : version.longValue()), request);
            redirect.addFlashAttribute("said", "said.planned");
            return "redirect:/retunes/" + planned.id();
        } catch (Refusal refusal) {
            if (refusal.code() == Code.NOT_FOUND) {
                throw refusal;
            }
            RetuneItemView now = show(call.caller(), id, model);
            forms.refuse(refusal, model, response);
            // what was typed stays, over the version that is there now: whoever saves again has seen the other's change
            model.addAttribute(
                    "plan",
                    new PlanForm(Long.toString(now.version()), plan.assignee(), plan.promisedAt(), plan.note()));
            if (refusal.code() == Code.STALE) {
                planHistory.last(now).ifPresent(change -> model.addAttribute("changedBy", change));
            }
            return ONE;
        }
    }

    @Needs(Act.CLEAR_RETUNE)
    @PostMapping("/retunes/{id}/sign-off")
    String signOff(
            Call call,
            @PathVariable UUID id,
            @ModelAttribute SignOffForm form,
            @RequestParam(required = false) @Nullable String password,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        try {
            Typed typed = forms.read();
            ClearanceRequest request = new ClearanceRequest(
                    typed.choice("basis", form.basis(), Fact.ClearanceBasis.class, Fact.ClearanceBasis.FLASHED),
                    typed.text("signOffNote", form.signOffNote()));
            typed.check(request, "");
            typed.done();
            RetuneItems.SignOff signOff = items.clear(signatures.signed(call, password), id, request);
            if (signOff.item() == null) {
                throw Refusal.of(Code.EVIDENCE_MISSING, "problem.evidence-missing");
            }
            redirect.addFlashAttribute("said", "said.signed-off");
            return "redirect:/cars/" + signOff.item().vehicleId();
        } catch (Refusal refusal) {
            if (refusal.code() == Code.NOT_FOUND || refusal.code() == Code.FORBIDDEN) {
                throw refusal;
            }
            RetuneItemView item = show(call.caller(), id, model);
            model.addAttribute("plan", planOf(item));
            model.addAttribute("signOff", form);
            forms.refuse(refusal, model, response);
            return ONE;
        }
    }

    private PlanForm planOf(RetuneItemView item) {
        return new PlanForm(
                Long.toString(item.version()), item.assignee(), times.typed(item.promisedAt()), item.note());
    }

    private RetuneItemView show(Caller caller, UUID id, Model model) {
        RetuneItemView item = items.get(id);
        Forms.fresh(model);
        model.addAttribute("item", item);
        model.addAttribute("car", vehicles.view(item.vehicleId(), caller).orElseThrow());
        model.addAttribute("signOff", SignOffForm.EMPTY);
        model.addAttribute("mayPlan", caller.may(Act.PLAN_RETUNE));
        model.addAttribute("maySignOff", caller.may(Act.CLEAR_RETUNE));
        if (item.status() == RetuneItemView.Status.OPEN) {
            Map<Fact.ClearanceBasis, List<DecisionView.CheckView>> evidence = new EnumMap<>(Fact.ClearanceBasis.class);
            for (Fact.ClearanceBasis basis : Fact.ClearanceBasis.values()) {
                evidence.put(basis, items.evidence(id, basis, caller.userId()));
            }
            model.addAttribute("evidence", evidence);
        }
        return item;
    }
}
