package org.bayhold.gate;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.bayhold.buildsheet.CarState;
import org.bayhold.buildsheet.DriveLogged;
import org.bayhold.buildsheet.HistoryLines;
import org.bayhold.identity.Act;
import org.bayhold.identity.Caller;
import org.bayhold.identity.Needs;
import org.bayhold.refusal.Refusal;
import org.bayhold.vehicle.VehicleView;
import org.bayhold.vehicle.Vehicles;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.servlet.ModelAndView;

/** One car: what the gate says, what is on it beside its calibration, its retune, its record. */
@Controller
class CarPage {
    private final Vehicles vehicles;
    private final Decisions decisions;
    private final DecisionViews views;
    private final Beside beside;
    private final RetuneItems items;
    private final HistoryLines histories;
    private final ObjectProvider<PlannedWork> plannedWork;
    private final PredictionPages predictions;

    CarPage(
            Vehicles vehicles,
            Decisions decisions,
            DecisionViews views,
            Beside beside,
            RetuneItems items,
            HistoryLines histories,
            ObjectProvider<PlannedWork> plannedWork,
            PredictionPages predictions) {
        this.vehicles = vehicles;
        this.decisions = decisions;
        this.views = views;
        this.beside = beside;
        this.items = items;
        this.histories = histories;
        this.plannedWork = plannedWork;
        this.predictions = predictions;
    }

    private static List<DriveLogged> newestFirst(List<DriveLogged> drives) {
        List<DriveLogged> newest = new ArrayList<>(drives);
        Collections.reverse(newest);
        return newest;
    }

    @Needs(Act.READ)
    @GetMapping("/cars/{id}")
    ModelAndView car(Caller caller, @PathVariable UUID id) {
        VehicleView car = vehicles.view(id, caller).orElseThrow(() -> Refusal.notFound("vehicle.not-found"));
        Decision decision = decisions.of(id, null, null);
        UUID item = decision.car().openItem().map(CarState.OpenItem::id).orElse(null);
        RetuneItemView retune = item == null ? null : items.get(item);
        List<BesideLine> lines = beside.of(decision);
        return new ModelAndView("gate/car")
                .addObject("car", car)
                .addObject("gate", views.view(decision, caller.units()))
                .addObject(
                        "prediction", predictions.of(decision, caller.units()).orElse(null))
                .addObject("stay", decision.car().stay())
                .addObject("steps", NextStep.all(decision, item))
                .addObject("item", retune)
                .addObject("told", retune == null ? Map.of() : histories.told(RetunePages.causes(retune)))
                .addObject(
                        "planned",
                        plannedWork.stream()
                                .flatMap(work -> work.on(decision.car()).stream())
                                .toList())
                .addObject("drives", newestFirst(decision.car().driveLogs()))
                .addObject("settled", !decision.car().stay().inShop() && item == null)
                .addObject("left", TodayPage.lastHandover(decision.car()))
                .addObject(
                        "lines",
                        lines.stream()
                                .filter(line -> !line.usual() && !line.unseen())
                                .toList())
                .addObject("unseen", lines.stream().filter(BesideLine::unseen).toList())
                .addObject("usual", lines.stream().filter(BesideLine::usual).toList())
                .addObject("history", histories.of(id, decision.knownAt(), caller));
    }
}
