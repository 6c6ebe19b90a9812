package org.bayhold.vehicle;

import java.time.Instant;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.bayhold.journal.CanonicalJson;
import org.bayhold.journal.ChainKind;
import org.bayhold.journal.Entry;
import org.bayhold.journal.JournalledRow;
import org.bayhold.journal.JournalledRows;
import org.bayhold.journal.JournalledTable;
import org.bayhold.journal.Personal;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/** A car's row says what its registration says, and after that what was amended last. */
@Component
class JournalledVehicles implements JournalledRows {
    private static final String VEHICLES = "vehicle";

    /** Columns that an amendment changes. */
    private static final List<String> AMENDED = List.of(
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

    private final CanonicalJson json;

    JournalledVehicles(CanonicalJson json) {
        this.json = json;
    }

    @Override
    public List<JournalledTable> tables() {
        return List.of(JournalledTable.ofChains(VEHICLES, Set.of(VehicleWrites.REGISTERED), "id"));
    }

    @Override
    public List<JournalledRow> rowsOf(Entry entry) {
        if (!entry.kind().equals(VehicleWrites.REGISTERED)) {
            return List.of();
        }
        JournalledRow row = registered(entry);
        for (String column : AMENDED) {
            row = row.without(column);
        }
        return List.of(row, JournalledRow.head(entry.chain(), ChainKind.VEHICLE));
    }

    @Override
    public @Nullable JournalledRow present(@Nullable JournalledRow before, Entry entry) {
        return switch (entry.kind()) {
            case VehicleWrites.REGISTERED -> registered(entry);
            case VehicleWrites.AMENDED -> before == null ? null : amended(before, entry);
            default -> before;
        };
    }

    /** Hardware, odometer and whether it is here follow from the facts of the car, which its row only shows. */
    private JournalledRow registered(Entry entry) {
        VehicleRegistered registered = json.read(entry.record(), VehicleRegistered.class);
        return JournalledRow.of(VEHICLES, new VehicleRow(entry.chain(), registered, entry.seq(), entry.recordedAt()))
                .without("ecu_hardware")
                .without("odometer_km")
                .without("in_shop")
                .without("stay_since");
    }

    private JournalledRow amended(JournalledRow before, Entry entry) {
        VehicleAmended amended = json.read(entry.record(), VehicleAmended.class);
        Instant at = entry.effectiveAt();
        JournalledRow row = before.with("version", entry.seq());
        if (amended.namesPlate() && !isLate(at, row, "plate_since")) {
            row = row.with("plate_id", id(amended.plate())).with("plate_since", at);
        }
        Owner owner = amended.owner();
        if (owner != null && !isLate(at, row, "owner_since")) {
            row = row.with("owner_name_id", owner.name().id())
                    .with("owner_phone_id", id(owner.phone()))
                    .with("owner_email_id", id(owner.email()))
                    .with("owner_since", at);
        }
        row = with(row, at, "engine", amended.engine(), "engine_since");
        row = with(row, at, "displacement_cc", amended.displacementCc(), "displacement_since");
        return with(row, at, "cylinders", amended.cylinders(), "cylinders_since");
    }

    private static JournalledRow with(
            JournalledRow row, Instant at, String column, @Nullable Object value, String since) {
        return value == null || isLate(at, row, since)
                ? row
                : row.with(column, value).with(since, at);
    }

    private static boolean isLate(Instant at, JournalledRow row, String since) {
        return VehicleRow.isLate(at, (Instant) row.columns().get(since));
    }

    private static @Nullable UUID id(@Nullable Personal personal) {
        return personal == null ? null : personal.id();
    }
}
