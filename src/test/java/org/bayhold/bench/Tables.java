package org.bayhold.bench;

import java.sql.SQLException;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import org.bayhold.support.AnyPostgres;
import org.jspecify.annotations.Nullable;

/** The tables that a made shop fills. */
final class Tables implements AutoCloseable {
    private static final String NOBODY = "00000000-0000-7000-8000-0000000000aa";
    private static final String HASH = "0".repeat(64);

    private final CopyTable heads;
    private final CopyTable vehicles;
    private final CopyTable parts;
    private final CopyTable revisions;
    private final CopyTable coverage;
    private final CopyTable withdrawals;
    private final CopyTable facts;
    private final CopyTable items;
    private final CopyTable causes;
    private final CopyTable journal;
    private final Map<UUID, Open> open = new HashMap<>();
    private long ids;
    private long written;

    private record Open(UUID vehicle, Instant openedAt) {}

    record Stamp(UUID id, UUID vehicle, long seq, Instant effectiveAt, Instant recordedAt) {}

    Tables(AnyPostgres.Database database) throws SQLException {
        heads = new CopyTable(
                database.connect(), "chain_head (chain_id, kind, seq, last_hash, last_recorded_at, open_item_id)");
        vehicles = new CopyTable(
                database.connect(),
                "vehicle (id, frame_number, description, baseline, registered_ecu, ecu_hardware, version, registered_at)");
        parts = new CopyTable(
                database.connect(),
                "part_spec (id, category, maker, part_number, spec_revision, name_key, attributes, recorded_at, recorded_by)");
        revisions = new CopyTable(
                database.connect(),
                "calibration (id, name, revision, name_key, ecu_hardware, calid, cvn, purpose, assumes, recorded_at, recorded_by)");
        coverage = new CopyTable(
                database.connect(),
                "calibration_coverage (calibration_id, row_no, line_no, category, part_spec_id, factory_allowed, none_allowed)");
        withdrawals = new CopyTable(
                database.connect(), "calibration_withdrawal (calibration_id, reason_id, withdrawn_at, recorded_by)");
        facts = new CopyTable(
                database.connect(),
                "fact (id, vehicle_id, seq, kind, effective_at, recorded_at, recorded_by, category, action, part_spec_id,"
                        + " calibration_id, outcome, source, calid, cvn, target_id, basis, failed_checks)");
        items = new CopyTable(
                database.connect(), "retune_item (id, vehicle_id, opened_at, risk, cleared_at, basis, version)");
        causes =
                new CopyTable(database.connect(), "retune_cause (item_id, code, record_id, effective_at, recorded_at)");
        journal = new CopyTable(
                database.connect(),
                "journal_entry (chain_id, seq, id, kind, effective_at, recorded_at, recorded_by, body, prev_hash, hash)");
    }

    UUID nextId() {
        ids++;
        return new UUID(0x0190_0000_0000_7000L, 0x8000_0000_0000_0000L | ids);
    }

    long facts() {
        return written;
    }

    void part(UUID id, String category) throws SQLException {
        parts.row(id, category, "Kestrel Parts", id, "A", id, "{}", MadeShop.BEGIN, NOBODY);
    }

    void revision(
            UUID id,
            int number,
            String hardware,
            UUID intake,
            UUID injectors,
            Instant issuedAt,
            @Nullable Instant withdrawnAt)
            throws SQLException {
        revisions.row(
                id,
                "Street",
                number,
                "street " + number,
                hardware,
                calid(number),
                cvn(number),
                "NORMAL",
                "{}",
                issuedAt,
                NOBODY);
        coverage.row(id, 0, 0, "AIR_INTAKE", intake, false, false);
        coverage.row(id, 1, 1, "INJECTORS", injectors, false, false);
        if (withdrawnAt != null) {
            withdrawals.row(id, NOBODY, withdrawnAt, NOBODY);
        }
    }

    private static String calid(int number) {
        return "CAL-" + number;
    }

    private static String cvn(int number) {
        return String.format("%08X", number);
    }

    void car(UUID id, int number, String hardware, Instant at) throws SQLException {
        vehicles.row(id, "F-" + number, "Northwind 2.0 hatchback", "FACTORY", hardware, hardware, 1, at);
    }

    void head(UUID vehicle, long seq, @Nullable UUID openItem, Instant last, String by) throws SQLException {
        heads.row(vehicle, "VEHICLE", seq, HASH, last, openItem);
    }

    void fact(
            Stamp stamp,
            String kind,
            @Nullable UUID revision,
            @Nullable String outcome,
            @Nullable String source,
            @Nullable UUID target,
            @Nullable String basis)
            throws SQLException {
        row(stamp, kind, null, null, null, revision, outcome, source, null, null, target, basis, null);
    }

    void change(Stamp stamp, String category, String action, @Nullable UUID part, String source) throws SQLException {
        row(stamp, "PART_CHANGED", category, action, part, null, null, source, null, null, null, null, null);
    }

    void readBack(Stamp stamp, int revision, String source) throws SQLException {
        row(stamp, "READ_BACK", null, null, null, null, null, source, calid(revision), cvn(revision), null, null, null);
    }

    void handover(Stamp stamp, String basis, List<String> failed) throws SQLException {
        row(stamp, "HANDED_OVER", null, null, null, null, null, null, null, null, null, basis, failed.size());
        if (!failed.isEmpty()) {
            journal.row(
                    stamp.vehicle(),
                    stamp.seq(),
                    stamp.id(),
                    "HANDED_OVER",
                    stamp.effectiveAt(),
                    stamp.recordedAt(),
                    NOBODY,
                    entry(stamp, failed).replace("\\", "\\\\"),
                    stamp.id(),
                    HASH);
        }
    }

    /** The entry of an exception, with as much of its decision as the audit reads. */
    private static String entry(Stamp stamp, List<String> failed) {
        String checks = failed.stream()
                .map(code -> "{\"code\":\"" + code
                        + "\",\"outcome\":\"FAIL\",\"reason\":\"\",\"reasonCode\":\"NOT_COVERED\",\"records\":[]}")
                .collect(Collectors.joining(","));
        String decision = "{\"vehicleId\":\"" + stamp.vehicle() + "\",\"evaluatedAt\":\"" + stamp.recordedAt()
                + "\",\"effectiveAt\":\"" + stamp.effectiveAt()
                + "\",\"rules\":1,\"decision\":\"HOLD\",\"risk\":\"HIGH\",\"checks\":[" + checks
                + "],\"mismatches\":[]}";
        return "{\"chain\":\"" + stamp.vehicle() + "\",\"seq\":" + stamp.seq() + ",\"id\":\"" + stamp.id()
                + "\",\"kind\":\"HANDED_OVER\",\"effectiveAt\":\"" + stamp.effectiveAt() + "\",\"recordedAt\":\""
                + stamp.recordedAt() + "\",\"by\":\"" + NOBODY
                + "\",\"record\":{\"basis\":\"EXCEPTION\",\"failedChecks\":"
                + failed.size() + ",\"decision\":\"" + decision.replace("\"", "\\\"") + "\"},\"prev\":\"" + HASH
                + "\"}";
    }

    void doubt(Stamp stamp, UUID item, boolean opens, String code, UUID record, Instant since) throws SQLException {
        fact(stamp, opens ? "RETUNE_OPENED" : "RETUNE_JOINED", null, null, null, item, null);
        causes.row(item, code, record, since, stamp.recordedAt());
        if (opens) {
            open.put(item, new Open(stamp.vehicle(), stamp.recordedAt()));
        }
    }

    void closed(UUID item, Instant at) throws SQLException {
        Open was = java.util.Objects.requireNonNull(open.remove(item));
        items.row(item, was.vehicle(), was.openedAt(), "HIGH", at, "FLASHED", 1);
    }

    private void row(
            Stamp stamp,
            String kind,
            @Nullable String category,
            @Nullable String action,
            @Nullable UUID part,
            @Nullable UUID revision,
            @Nullable String outcome,
            @Nullable String source,
            @Nullable String calid,
            @Nullable String cvn,
            @Nullable UUID target,
            @Nullable String basis,
            @Nullable Integer failedChecks)
            throws SQLException {
        written++;
        facts.row(
                stamp.id(),
                stamp.vehicle(),
                stamp.seq(),
                kind,
                stamp.effectiveAt(),
                stamp.recordedAt(),
                NOBODY,
                category,
                action,
                part,
                revision,
                outcome,
                source,
                calid,
                cvn,
                target,
                basis,
                failedChecks);
    }

    @Override
    public void close() throws SQLException {
        for (Map.Entry<UUID, Open> item : open.entrySet()) {
            items.row(item.getKey(), item.getValue().vehicle(), item.getValue().openedAt(), "HIGH", null, null, 1);
        }
        for (CopyTable table :
                List.of(heads, vehicles, parts, revisions, coverage, withdrawals, facts, items, causes, journal)) {
            table.close();
        }
    }
}
