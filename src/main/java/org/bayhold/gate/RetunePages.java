package org.bayhold.gate;

import java.time.Clock;
import java.time.Instant;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.bayhold.buildsheet.Fact;
import org.bayhold.buildsheet.HistoryLines;
import org.bayhold.identity.Act;
import org.bayhold.identity.Call;
import org.bayhold.identity.Caller;
import org.bayhold.identity.Needs;
import org.bayhold.identity.Signatures;
import org.bayhold.page.Form;
import org.bayhold.page.SiteTime;
import org.bayhold.refusal.Code;
import org.bayhold.refusal.Refusal;
import org.bayhold.vehicle.VehicleView;
import org.bayhold.vehicle.Vehicles;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.servlet.ModelAndView;

/** <i>Retunes</i>: what is outstanding, who does it by when, and the sign-off. */
@Controller
class RetunePages {
    private static final String ONE = "gate/retune";

    private final RetuneItems items;
    private final PlanHistory planHistory;
    private final HistoryLines histories;
    private final Vehicles vehicles;
    private final SiteTime time;
    private final Signatures signatures;
    private final Clock clock;

    RetunePages(
            RetuneItems items,
            PlanHistory planHistory,
            HistoryLines histories,
            Vehicles vehicles,
            SiteTime time,
            Signatures signatures,
            Clock clock) {
        this.clock = clock;
        this.items = items;
        this.planHistory = planHistory;
        this.histories = histories;
        this.vehicles = vehicles;
        this.time = time;
        this.signatures = signatures;
    }

    /** An item with its car, and what caused it, each record once. */
    record Row(RetuneItemView item, @Nullable VehicleView car, List<String> why, boolean overdue) {}

    @Needs(Act.READ)
    @GetMapping("/retunes")
    ModelAndView outstanding(Caller caller) {
        List<RetuneItemView> outstanding = items.outstanding();
        Map<UUID, VehicleView> cars = vehicles.views(
                outstanding.stream().map(RetuneItemView::vehicleId).toList(), caller);
        Map<UUID, String> told = histories.told(
                outstanding.stream().flatMap(item -> causes(item).stream()).toList());
        Instant now = clock.instant();
        List<Row> rows = outstanding.stream()
                .map(item -> new Row(item, cars.get(item.vehicleId()), why(item, told), isOverdue(item, now)))
                .toList();
        return new ModelAndView("gate/retunes", Map.of("rows", rows));
    }

    private static boolean isOverdue(RetuneItemView item, Instant now) {
        return item.promisedAt() != null && item.promisedAt().isBefore(now);
    }

    static List<UUID> causes(RetuneItemView item) {
        return item.causes().stream().map(RetuneItemView.CauseView::recordId).toList();
    }

    private static List<String> why(RetuneItemView item, Map<UUID, String> told) {
        return item.causes().stream()
                .map(cause -> told.getOrDefault(cause.recordId(), cause.sentence()))
                .distinct()
                .toList();
    }

    @Needs(Act.READ)
    @GetMapping("/retunes/{id}")
    ModelAndView one(Caller caller, @PathVariable UUID id, Form form) {
        return page(form.show(ONE), caller, id, form);
    }

    @Needs(Act.PLAN_RETUNE)
    @PostMapping("/retunes/{id}/plan")
    ModelAndView plan(Call call, @PathVariable UUID id, Form form) {
        ModelAndView page = form.submit(ONE, () -> {
            Integer version = form.integer("version");
            PlanRequest request = new PlanRequest(form.text("assignee"), form.time("promisedAt"), form.text("note"));
            form.check(request);
            try {
                RetuneItemView planned =
                        items.plan(call, id, Optional.of(version == null ? -1L : version.longValue()), request);
                return form.done("/retunes/" + planned.id(), "said.planned");
            } catch (Refusal refusal) {
                // the page itself says who changed what
                throw refusal.code() == Code.STALE ? Refusal.of(Code.STALE, "retunes.stale") : refusal;
            }
        });
        if (page.getStatus() == HttpStatus.PRECONDITION_FAILED) {
            planHistory.last(items.get(id)).ifPresent(change -> page.addObject("changed", change));
        }
        return page(page, call.caller(), id, form);
    }

    @Needs(Act.CLEAR_RETUNE)
    @PostMapping("/retunes/{id}/sign-off")
    ModelAndView signOff(Call call, @PathVariable UUID id, Form form) {
        ModelAndView page = form.submit(ONE, () -> {
            Fact.ClearanceBasis basis = form.choice("basis", Fact.ClearanceBasis.class);
            if (basis == null && form.error("basis") == null) {
                form.refused(Refusal.invalid("basis", "form.choice"));
            }
            ClearanceRequest request =
                    new ClearanceRequest(basis == null ? Fact.ClearanceBasis.FLASHED : basis, form.text("signOffNote"));
            form.check(request);
            Call signed = signatures.sign(call, form.secret("password"));
            RetuneItems.SignOff signOff = items.clear(signed, id, request);
            if (signOff.item() == null) {
                throw Refusal.of(Code.EVIDENCE_MISSING, "problem.evidence-missing");
            }
            return form.done("/cars/" + signOff.item().vehicleId(), "said.signed-off");
        });
        return page(page, call.caller(), id, form);
    }

    private ModelAndView page(ModelAndView page, Caller caller, UUID id, Form form) {
        if (Form.leadsOn(page)) {
            return page;
        }
        RetuneItemView item = items.get(id);
        form.with("assignee", item.assignee()).with("note", item.note());
        if (item.promisedAt() != null) {
            form.with("promisedAt", time.input(item.promisedAt()));
        }
        page.addObject("item", item)
                .addObject("told", histories.told(causes(item)))
                .addObject("car", vehicles.view(item.vehicleId(), caller).orElseThrow());
        if (item.status() == RetuneItemView.Status.OPEN) {
            Map<Fact.ClearanceBasis, List<DecisionView.CheckView>> evidence = new EnumMap<>(Fact.ClearanceBasis.class);
            for (Fact.ClearanceBasis basis : Fact.ClearanceBasis.values()) {
                evidence.put(basis, items.evidence(id, basis, caller.userId()));
            }
            page.addObject("evidence", evidence);
            evidence.entrySet().stream()
                    .filter(entry -> entry.getValue().stream().noneMatch(check -> check.outcome() == Outcome.FAIL))
                    .findFirst()
                    .ifPresent(entry -> form.with("basis", entry.getKey()));
        }
        return page;
    }
}
