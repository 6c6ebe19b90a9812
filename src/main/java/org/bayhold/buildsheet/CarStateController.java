package org.bayhold.buildsheet;

import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import org.bayhold.catalog.Catalog;
import org.bayhold.catalog.PartSpec;
import org.bayhold.identity.Act;
import org.bayhold.identity.Caller;
import org.bayhold.identity.Needs;
import org.bayhold.journal.Page;
import org.jspecify.annotations.Nullable;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

/** What follows from a car's record, over HTTP. */
@RestController
@RequestMapping("/api/v1/vehicles/{id}")
class CarStateController {
    private final CarRecords records;
    private final Histories histories;
    private final Catalog catalog;
    private final Clock clock;

    CarStateController(CarRecords records, Histories histories, Catalog catalog, Clock clock) {
        this.records = records;
        this.histories = histories;
        this.catalog = catalog;
        this.clock = clock;
    }

    @Needs(Act.READ)
    @GetMapping("/build-sheet")
    BuildSheetView buildSheet(
            @PathVariable UUID id,
            @RequestParam @Nullable Instant effectiveAt,
            @RequestParam @Nullable Instant knownAt) {
        CarRecord record = records.of(id);
        AsOf asOf = AsOf.of(record, clock, effectiveAt, knownAt);
        CarState car = record.at(asOf.effectiveAt(), asOf.knownAt());
        Map<UUID, PartSpec> specs = catalog.specs(car.lines().stream()
                .map(line -> line.fitted().partSpecId())
                .filter(Objects::nonNull)
                .map(Objects::requireNonNull)
                .toList());
        List<BuildSheetView.Line> lines = car.lines().stream()
                .map(line -> new BuildSheetView.Line(
                        line.place().category(),
                        line.place().position(),
                        line.group(),
                        line.fitted().state(),
                        specs.get(line.fitted().partSpecId()),
                        line.since()))
                .toList();
        return new BuildSheetView(
                id, asOf.effectiveAt(), asOf.knownAt(), car.ecuHardware(), lines, FlashedView.of(car.inEcu()));
    }

    @Needs(Act.READ)
    @GetMapping("/history")
    Page<HistoryView> history(Caller caller, @PathVariable UUID id, @RequestParam @Nullable Instant knownAt) {
        AsOf asOf = AsOf.of(records.of(id), clock, null, knownAt);
        return Page.whole(histories.of(id, asOf.knownAt(), caller));
    }
}
