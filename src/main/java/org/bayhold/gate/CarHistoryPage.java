package org.bayhold.gate;

import java.time.Clock;
import java.time.Instant;
import java.util.UUID;
import org.bayhold.buildsheet.AsOf;
import org.bayhold.buildsheet.CarRecord;
import org.bayhold.buildsheet.CarRecords;
import org.bayhold.buildsheet.HistoryLines;
import org.bayhold.identity.Act;
import org.bayhold.identity.Caller;
import org.bayhold.identity.Needs;
import org.bayhold.page.Form;
import org.bayhold.refusal.Refusal;
import org.bayhold.vehicle.VehicleView;
import org.bayhold.vehicle.Vehicles;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.servlet.ModelAndView;

/** A car at any two times: as it was on one day, as it was known on another. docs/rules.md, rule 8. */
@Controller
class CarHistoryPage {
    private final Vehicles vehicles;
    private final CarRecords records;
    private final Decisions decisions;
    private final DecisionViews views;
    private final Beside beside;
    private final TimeLines timeLines;
    private final HistoryLines histories;
    private final Clock clock;

    CarHistoryPage(
            Vehicles vehicles,
            CarRecords records,
            Decisions decisions,
            DecisionViews views,
            Beside beside,
            TimeLines timeLines,
            HistoryLines histories,
            Clock clock) {
        this.vehicles = vehicles;
        this.records = records;
        this.decisions = decisions;
        this.views = views;
        this.beside = beside;
        this.timeLines = timeLines;
        this.histories = histories;
        this.clock = clock;
    }

    @Needs(Act.READ)
    @GetMapping("/cars/{id}/history")
    ModelAndView history(Caller caller, @PathVariable UUID id, Form form) {
        VehicleView car = vehicles.view(id, caller).orElseThrow(() -> Refusal.notFound("vehicle.not-found"));
        CarRecord record = records.of(id);
        AsOf asOf = asked(form, record);
        Decision decision = decisions.of(record, asOf.effectiveAt(), asOf.knownAt());
        return form.show("gate/history")
                .addObject("car", car)
                .addObject("asOf", asOf)
                .addObject(
                        "asked",
                        !form.value("was").isEmpty() || !form.value("known").isEmpty())
                .addObject("gate", views.view(decision))
                .addObject(
                        "lines",
                        beside.of(decision).stream()
                                .filter(line -> !line.usual() && !line.unseen())
                                .toList())
                .addObject(
                        "picture",
                        timeLines.of(record, asOf, !form.value("known").isEmpty()))
                .addObject("history", histories.of(id, asOf.knownAt(), caller));
    }

    /** A time that cannot be read, or lies ahead, is said at its field, and the page shows the present. */
    private AsOf asked(Form form, CarRecord record) {
        Instant was = form.time("was");
        Instant known = form.time("known");
        try {
            return AsOf.of(record, clock, was, known);
        } catch (Refusal refusal) {
            form.refused(refusal.renamed(CarHistoryPage::ofPage));
            return AsOf.of(record, clock, null, null);
        }
    }

    private static String ofPage(String field) {
        return field.equals("knownAt") ? "known" : "was";
    }
}
