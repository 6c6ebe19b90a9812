package org.bayhold.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.bayhold.journal.CanonicalJson;
import org.bayhold.journal.Entry;
import org.bayhold.journal.JournalledRow;
import org.junit.jupiter.api.Test;

/** The rows that an entry of the journal asks for: none of maps where it is from before there were any. */
class JournalledMapsTest {
    private static final UUID FUEL = new UUID(0x7000, 1);
    private static final UUID OTHER = new UUID(0x7000, 3);
    private static final UUID NOTE = new UUID(0x7000, 2);
    private static final String BEFORE_MAPS = """
            {"assumes":{},"calid":"CAL","coverage":[],"cvn":"00000001","ecuHardware":"HW-1","name":"Street",\
            "purpose":"NORMAL","revision":"1"}""";

    private final CanonicalJson json = new CanonicalJson();
    private final JournalledCalibrations journalled = new JournalledCalibrations(json);

    private List<JournalledRow> maps(String record) {
        Entry entry = new Entry(
                new UUID(0x7000, 9),
                1,
                new UUID(0x7000, 9),
                CalibrationWrites.ISSUED,
                Instant.EPOCH,
                Instant.EPOCH,
                new UUID(0x7000, 8),
                json.parse(record),
                "0".repeat(64));
        List<JournalledRow> rows = journalled.rowsOf(entry);
        assertThat(rows).extracting(JournalledRow::table).contains("calibration", "chain_head");
        return rows.stream()
                .filter(row -> row.table().equals("calibration_map"))
                .toList();
    }

    @Test
    void anEntryFromBeforeThereWereMapsAsksForNone() {
        assertThat(maps(BEFORE_MAPS)).isEmpty();
    }

    @Test
    void eachFuelOfEachMapIsARow() {
        String maps = """
                {"maps":[{"factoryFuel":false,"fuels":[],"name":"A"},{"factoryFuel":true,"fuels":["%s","%s"],\
                "name":"B","note":{"id":"%s","sha256":"00"}}],"assumes":""".formatted(FUEL, OTHER, NOTE);
        List<JournalledRow> rows = maps(BEFORE_MAPS.replace("{\"assumes\":", maps));
        assertThat(rows)
                .extracting(
                        row -> row.columns().get("row_no"),
                        row -> row.columns().get("map_no"),
                        row -> row.columns().get("name"),
                        row -> row.columns().get("fuel_id"),
                        row -> row.columns().get("factory_fuel"),
                        row -> row.columns().get("note_id"))
                .containsExactly(
                        tuple(0L, 0L, "A", null, false, null),
                        tuple(1L, 1L, "B", FUEL, true, NOTE),
                        tuple(2L, 1L, "B", OTHER, true, NOTE));
    }
}
