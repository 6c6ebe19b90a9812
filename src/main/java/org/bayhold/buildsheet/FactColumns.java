package org.bayhold.buildsheet;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.bayhold.catalog.Category;
import org.bayhold.catalog.Place;
import org.bayhold.drivelog.Verdict;
import org.bayhold.journal.Personal;
import org.bayhold.journal.Row;
import org.bayhold.journal.Snapshots;
import org.bayhold.obd.Reading;
import org.bayhold.prediction.Risk;
import org.springframework.stereotype.Component;

/**
 * The facts of many cars in three questions, from their typed columns: enough for a fold and for the gate. What people
 * said in their own words, what a sign-off rests on and what a handover decided stay in the journal. A start of the
 * server holds the columns against the journal; docs/decisions/0011 says why that is enough here.
 */
@Component
class FactColumns {
    private static final String FACTS = """
            select f.vehicle_id, f.seq, f.id, f.kind, f.effective_at, f.recorded_at, f.recorded_by, f.category, f.position,
                   f.action, f.part_spec_id, f.ecu_hardware, f.calibration_id, f.outcome, f.source, f.calid, f.cvn,
                   f.file_sha256, f.target_id, f.basis, f.failed_checks, f.related_codes, f.rules,
                   f.map_name, f.verdict, f.risk
            from fact f
            where f.vehicle_id in (:ids) and f.kind not in ('RETUNE_PLANNED', 'HANDOFF_REFUSED')
            order by f.vehicle_id, f.seq""";
    private static final String LINES = """
            select l.fact_id, l.category, l.position, l.state, l.part_spec_id
            from fact f join inspection_line l on l.fact_id = f.id
            where f.vehicle_id in (:ids) and f.kind = 'INSPECTED'
            order by l.fact_id, l.line_no""";
    private static final Personal LEFT_OUT = new Personal(new UUID(0, 0), "");

    private final Snapshots snapshots;
    private final CausesOfItems causesOfItems;

    FactColumns(Snapshots snapshots, CausesOfItems causesOfItems) {
        this.snapshots = snapshots;
        this.causesOfItems = causesOfItems;
    }

    private record Line(UUID factId, Fact.Inspected.Line line) {}

    /** By car, each car's in the order of its chain; a car without any is left out. */
    Map<UUID, List<Fact>> of(Collection<UUID> vehicleIds) {
        Map<String, Collection<UUID>> cars = Map.of("ids", vehicleIds);
        Map<UUID, List<Fact.Inspected.Line>> lines = new HashMap<>();
        for (Line line : snapshots.rows(LINES, cars, FactColumns::line)) {
            lines.computeIfAbsent(line.factId(), id -> new ArrayList<>()).add(line.line());
        }
        Map<UUID, List<CausesOfItems.Told>> causes = causesOfItems.ofCars(vehicleIds);
        Map<UUID, List<Fact>> facts = new HashMap<>();
        for (Fact fact : snapshots.rows(FACTS, cars, row -> fact(row, lines, causes))) {
            facts.computeIfAbsent(fact.stamp().vehicleId(), id -> new ArrayList<>())
                    .add(fact);
        }
        return facts;
    }

    private static Line line(Row row) {
        return new Line(
                row.id(1), new Fact.Inspected.Line(place(row, 2), Fitted.State.valueOf(row.text(4)), row.idOrNull(5)));
    }

    private static Place place(Row row, int column) {
        return new Place(Category.valueOf(row.text(column)), row.textOrNull(column + 1));
    }

    private static Fact fact(
            Row row, Map<UUID, List<Fact.Inspected.Line>> lines, Map<UUID, List<CausesOfItems.Told>> causes) {
        Stamp stamp = new Stamp(row.id(3), row.id(1), row.number(2), row.time(5), row.time(6), row.id(7));
        String kind = row.text(4);
        return switch (kind) {
            case "ARRIVED" -> new Fact.Arrived(stamp, null, null);
            case "PART_CHANGED" ->
                new Fact.PartChanged(
                        stamp,
                        place(row, 8),
                        Fact.Action.valueOf(row.text(10)),
                        row.idOrNull(11),
                        null,
                        row.textOrNull(12),
                        source(row),
                        null,
                        null,
                        null);
            case "INSPECTED" ->
                new Fact.Inspected(stamp, lines.getOrDefault(stamp.id(), List.of()), source(row), null, null);
            case "FLASHED" ->
                new Fact.Flashed(
                        stamp,
                        row.idOrNull(13),
                        Fact.Outcome.valueOf(row.text(14)),
                        source(row),
                        null,
                        null,
                        null,
                        null);
            case "READ_BACK" ->
                new Fact.ReadBack(
                        stamp,
                        new Reading(row.textOrNull(16), row.textOrNull(17), row.textOrNull(18)),
                        RelatedCodes.of(row.textOrNull(22)),
                        null,
                        source(row),
                        null,
                        null);
            case "DRIVE_LOGGED" -> driveLogged(row, stamp);
            case "ACKNOWLEDGED" -> new Fact.Acknowledged(stamp, Fact.Usage.STREET, LEFT_OUT, null);
            case "VOIDED" -> new Fact.Voided(stamp, row.id(19), LEFT_OUT, null);
            case "RETUNE_OPENED" -> new Fact.RetuneOpened(stamp, row.id(19), told(row.id(19), stamp, causes));
            case "RETUNE_JOINED" -> new Fact.RetuneJoined(stamp, row.id(19), told(row.id(19), stamp, causes));
            case "RETUNE_LAPSED" -> new Fact.RetuneLapsed(stamp, row.id(19));
            case "CLEARED" ->
                new Fact.Cleared(stamp, row.id(19), Fact.ClearanceBasis.valueOf(row.text(20)), null, List.of(), null);
            case "HANDED_OVER" ->
                new Fact.HandedOver(
                        stamp,
                        Fact.HandoffBasis.valueOf(row.text(20)),
                        null,
                        null,
                        Math.toIntExact(row.number(21)),
                        "",
                        row.wholeOrNull(23));
            default -> throw new IllegalStateException("no fold knows a fact of the kind " + kind);
        };
    }

    /** What it found, how it was read and where it was driven stay in the journal. */
    private static DriveLogged driveLogged(Row row, Stamp stamp) {
        return new DriveLogged(
                stamp,
                row.idOrNull(19),
                row.text(18),
                0,
                row.idOrNull(13),
                row.textOrNull(24),
                Verdict.valueOf(row.text(25)),
                List.of(),
                List.of(),
                Risk.valueOf(row.text(26)),
                null,
                null,
                null,
                List.of(),
                null,
                "",
                source(row),
                null,
                null);
    }

    private static Fact.Source source(Row row) {
        return Fact.Source.valueOf(row.text(15));
    }

    /** Of all causes of the item those that this fact told: they share its time. */
    private static List<Cause> told(UUID item, Stamp stamp, Map<UUID, List<CausesOfItems.Told>> causes) {
        return causes.getOrDefault(item, List.of()).stream()
                .filter(told -> told.recordedAt().equals(stamp.recordedAt()))
                .map(CausesOfItems.Told::cause)
                .toList();
    }
}
