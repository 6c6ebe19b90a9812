package org.bayhold.calibration;

import jakarta.persistence.Embeddable;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** One fuel of one map; a map that names no fuel has one row without a fuel. */
@Embeddable
class MapRow {
    private int mapNo;
    private String name;
    private @Nullable UUID fuelId;
    private boolean factoryFuel;
    private @Nullable UUID noteId;

    @SuppressWarnings("NullAway.Init") // Hibernate fills it
    protected MapRow() {}

    private MapRow(int mapNo, CalibrationIssued.IssuedMap map, @Nullable UUID fuelId) {
        this.mapNo = mapNo;
        this.name = map.name();
        this.fuelId = fuelId;
        this.factoryFuel = map.factoryFuel();
        this.noteId = map.note() == null ? null : map.note().id();
    }

    /** A map, and what is kept of it apart. */
    record Stored(CalibrationMap map, @Nullable UUID noteId) {}

    static List<MapRow> rows(List<CalibrationIssued.IssuedMap> maps) {
        List<MapRow> rows = new ArrayList<>();
        for (int i = 0; i < maps.size(); i++) {
            CalibrationIssued.IssuedMap map = maps.get(i);
            if (map.fuels().isEmpty()) {
                rows.add(new MapRow(i, map, null));
            }
            for (UUID fuel : map.fuels()) {
                rows.add(new MapRow(i, map, fuel));
            }
        }
        return rows;
    }

    /** In the order in which they were given. */
    static List<Stored> maps(List<MapRow> rows) {
        return Runs.of(rows, row -> row.mapNo).stream().map(MapRow::map).toList();
    }

    private static Stored map(List<MapRow> rows) {
        MapRow first = rows.get(0);
        List<UUID> fuels = rows.stream()
                .map(row -> row.fuelId)
                .filter(Objects::nonNull)
                .map(Objects::requireNonNull)
                .toList();
        return new Stored(new CalibrationMap(first.name, fuels, first.factoryFuel), first.noteId);
    }
}
