package org.bayhold.journal;

import java.time.Instant;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.UUID;
import org.bayhold.journal.Tampering.Stored;
import org.jspecify.annotations.Nullable;

/** Tampers with the rows that stand next to the journal. */
final class TypedColumns {
    /** By table, what finds the entry of a row. */
    private static final Map<String, String> ENTRIES = Map.ofEntries(
            Map.entry("fact", "e.id = t.id"),
            Map.entry("drive_log_judgement", "e.id = t.fact_id"),
            Map.entry("column_meaning", "e.id = t.id"),
            Map.entry("inspection_line", "e.id = t.fact_id"),
            Map.entry("part_spec", "e.id = t.id"),
            Map.entry("part_spec_correction", "e.id = t.id"),
            Map.entry("category_move", "e.id = t.id"),
            Map.entry("calibration", "e.id = t.id"),
            Map.entry("calibration_coverage", "e.id = t.calibration_id"),
            Map.entry("calibration_map", "e.id = t.calibration_id"),
            Map.entry("calibration_withdrawal", "e.chain_id = t.calibration_id and e.kind = 'CALIBRATION_WITHDRAWN'"),
            Map.entry("policy_fact", "e.id = t.id"),
            Map.entry("part_spec_benefit_note", "e.id = t.id"),
            Map.entry("advice", "e.id = t.id"),
            Map.entry("planned_work", "e.id = t.id"),
            Map.entry("planned_work_dropped", "e.id = t.id"),
            Map.entry("vehicle", "e.id = t.id"),
            Map.entry(
                    "retune_cause",
                    "e.kind in ('RETUNE_OPENED', 'RETUNE_JOINED') and e.recorded_at = t.recorded_at"
                            + " and e.body like '%' || cast(t.item_id as varchar) || '%'"
                            + " and e.body like '%' || cast(t.record_id as varchar) || '%'"));

    /** Follow from other columns or from facts, and are there to be searched. */
    private static final Set<String> SHOWN =
            Set.of("name_key", "words", "ecu_hardware", "odometer_km", "in_shop", "stay_since");

    /** Columns of a car that show its present: a wrong one is found at the end of its chain. */
    private static final Set<String> PRESENT = Set.of(
            "engine",
            "displacement_cc",
            "cylinders",
            "plate_id",
            "owner_name_id",
            "owner_phone_id",
            "owner_email_id",
            "plate_since",
            "owner_since",
            "engine_since",
            "displacement_since",
            "cylinders_since",
            "version");

    private final Scratch scratch;
    private final SplittableRandom random;
    private final List<Stored> entries;
    private final Set<UUID> facts = new HashSet<>();

    TypedColumns(Scratch scratch, SplittableRandom random, List<Stored> entries) {
        this.scratch = scratch;
        this.random = random;
        this.entries = entries;
        scratch.rows("select id from fact").forEach(row -> facts.add((UUID) Objects.requireNonNull(row.get("id"))));
    }

    boolean hasFact(Stored entry) {
        return facts.contains(entry.id());
    }

    Tampering change() {
        String table = any(ENTRIES.keySet().stream().sorted().toList());
        Map<String, @Nullable Object> row = any(scratch.rows("select * from " + table + " t order by 1, 2"));
        String column = any(row.keySet().stream()
                .filter(name -> !SHOWN.contains(name)
                        || (table.equals("fact") || table.equals("calibration")) && name.equals("ecu_hardware"))
                // held against its hash whenever it is read, not at a start
                .filter(name -> !(table.equals("drive_log_judgement") && name.equals("body")))
                .toList());
        Stored entry = entryOf(table, row);
        Object old = row.get(column);
        Object other = old == null ? absent(table, column) : other(old);
        String where = String.join(
                " and ",
                row.keySet().stream()
                        .filter(name -> row.get(name) != null)
                        .map(name -> name + " = ?")
                        .toList());
        Object[] values = java.util.stream.Stream.concat(
                        java.util.stream.Stream.of(other),
                        row.values().stream().filter(Objects::nonNull).map(TypedColumns::parameter))
                .toArray();
        scratch.change(1, "update " + table + " set " + column + " = ? where " + where, values);
        Stored found = table.equals("vehicle") && PRESENT.contains(column) ? last(entry) : entry;
        return Tampering.at(found, "changed " + table + "." + column);
    }

    private static Object parameter(Object value) {
        return value instanceof Instant time ? time.atOffset(java.time.ZoneOffset.UTC) : value;
    }

    Tampering changesAText() {
        Map<String, @Nullable Object> row =
                any(scratch.rows("select id, text from personal_data where text is not null order by id"));
        UUID id = (UUID) Objects.requireNonNull(row.get("id"));
        String text = String.valueOf(row.get("text"));
        scratch.change(1, "update personal_data set text = ? where id = ?", text + " ", id);
        Stored entry = entries.stream()
                .filter(any -> any.body().contains("\"id\":\"" + id + "\""))
                .findFirst()
                .orElseThrow();
        return Tampering.at(entry, "changed a text that is kept apart");
    }

    Tampering addsARow() {
        if (random.nextBoolean()) {
            Stored entry = any(entries.stream().filter(this::hasFact).toList());
            UUID id = Ids.next();
            scratch.change(
                    1,
                    "insert into fact (id, vehicle_id, seq, kind, effective_at, recorded_at, recorded_by) select ?,"
                            + " vehicle_id, seq + 1000, 'ARRIVED', effective_at, recorded_at, recorded_by from fact"
                            + " where id = ?",
                    id,
                    entry.id());
            return new Tampering("added a fact", entry.chain(), entry.seq() + 1000, id);
        }
        Stored entry = any(entries.stream()
                .filter(any -> any.kind().equals("CALIBRATION_ISSUED"))
                .toList());
        scratch.change(
                1,
                "insert into calibration_coverage (calibration_id, row_no, line_no, category, factory_allowed,"
                        + " none_allowed) values (?, 77, 77, 'CAMSHAFT', true, true)",
                entry.id());
        return Tampering.at(entry, "added a line of coverage");
    }

    Tampering closesAnItem() {
        Map<String, @Nullable Object> item =
                any(scratch.rows("select id, vehicle_id from retune_item where cleared_at is null order by id"));
        scratch.change(
                1, "update retune_item set cleared_at = opened_at, basis = 'FLASHED' where id = ?", item.get("id"));
        boolean headToo = random.nextBoolean();
        if (headToo) {
            scratch.change(1, "update chain_head set open_item_id = null where chain_id = ?", item.get("vehicle_id"));
        }
        Stored last = entries.stream()
                .filter(any -> any.chain().equals(item.get("vehicle_id")))
                .reduce((a, b) -> b)
                .orElseThrow();
        return Tampering.at(last, "closed a retune item" + (headToo ? " and told the head" : ""));
    }

    private Stored entryOf(String table, Map<String, @Nullable Object> row) {
        List<Map<String, @Nullable Object>> found = scratch.rows(
                "select e.id as entry, t.* from " + table + " t join journal_entry e on " + ENTRIES.get(table));
        UUID id = found.stream()
                .filter(joined -> joined.entrySet().containsAll(row.entrySet()))
                .map(joined -> (UUID) Objects.requireNonNull(joined.get("entry")))
                .findFirst()
                .orElseThrow(() -> new IllegalStateException("no entry of " + table + " " + row));
        return entries.stream().filter(any -> any.id().equals(id)).findFirst().orElseThrow();
    }

    private Stored last(Stored of) {
        return entries.stream()
                .filter(any -> any.chain().equals(of.chain()))
                .reduce((a, b) -> b)
                .orElseThrow();
    }

    /** Another value of the same type. */
    static Object other(Object old) {
        if (old instanceof String text) {
            char end = text.isEmpty() ? 'A' : text.charAt(text.length() - 1);
            return text.isEmpty() ? "A" : text.substring(0, text.length() - 1) + (end == 'A' ? 'B' : 'A');
        }
        if (old instanceof Instant time) {
            return time.minusSeconds(1);
        }
        if (old instanceof Boolean flag) {
            return !flag;
        }
        if (old instanceof Long number) {
            return number + 1000;
        }
        return old instanceof Double number ? number + 1 : Ids.next();
    }

    private Object absent(String table, String column) {
        String type = String.valueOf(scratch.row(
                        "select lower(data_type) as type from information_schema.columns where lower(table_schema) ="
                                + " 'public' and lower(table_name) = ? and lower(column_name) = ?",
                        table,
                        column)
                .get("type"));
        if (type.startsWith("char")) {
            return "A";
        }
        if (type.startsWith("timestamp")) {
            return Instant.parse("2001-01-01T00:00:00Z");
        }
        return type.equals("uuid") ? Ids.next() : type.equals("double precision") ? (Object) 1.5 : 1L;
    }

    private <T> T any(List<T> of) {
        return of.get(random.nextInt(of.size()));
    }
}
