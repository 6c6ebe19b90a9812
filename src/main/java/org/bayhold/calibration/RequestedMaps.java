package org.bayhold.calibration;

import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.bayhold.catalog.Catalog;
import org.bayhold.catalog.Category;
import org.bayhold.refusal.Refusal;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/** Holds the maps of a revision to issue against the catalogue and against what the revision covers. */
@Component
class RequestedMaps {
    private final Catalog catalog;

    RequestedMaps(Catalog catalog) {
        this.catalog = catalog;
    }

    /** @throws Refusal INVALID where two share a name, or one is for a fuel that the revision does not cover */
    List<CalibrationMap> read(@Nullable List<MapRequest> requested, List<CoverageLine> coverage) {
        List<CoverageLine> fuelled = coverage.stream()
                .filter(line -> line.place().category() == Category.FUEL)
                .toList();
        List<CalibrationMap> maps = new ArrayList<>();
        for (int i = 0; requested != null && i < requested.size(); i++) {
            String field = "maps[" + i + "]";
            CalibrationMap map = map(requested.get(i));
            if (maps.stream().anyMatch(before -> before.isNamed(map.name()))) {
                throw Refusal.invalid(field + ".name", "calibration.map-twice", map.name());
            }
            holdKnown(requested.get(i), fuelled, field);
            maps.add(map);
        }
        return maps;
    }

    private static CalibrationMap map(MapRequest requested) {
        return new CalibrationMap(
                requested.name().strip(),
                fuels(requested).stream().distinct().toList(),
                Boolean.TRUE.equals(requested.factoryFuel()));
    }

    private static List<UUID> fuels(MapRequest requested) {
        return requested.fuels() == null ? List.of() : requested.fuels();
    }

    /** A revision that names no fuel leaves open which it is for. */
    private void holdKnown(MapRequest requested, List<CoverageLine> fuelled, String field) {
        List<UUID> fuels = fuels(requested);
        for (int i = 0; i < fuels.size(); i++) {
            UUID fuel = fuels.get(i);
            String at = field + ".fuels[" + i + "]";
            String name = catalog.cited(fuel, Category.FUEL, at).name();
            if (!fuelled.isEmpty()
                    && fuelled.stream().noneMatch(line -> line.partSpecIds().contains(fuel))) {
                throw Refusal.invalid(at, "calibration.map-fuel", name);
            }
        }
        if (Boolean.TRUE.equals(requested.factoryFuel())
                && !fuelled.isEmpty()
                && fuelled.stream().noneMatch(CoverageLine::factoryAllowed)) {
            throw Refusal.invalid(field + ".factoryFuel", "calibration.map-factory-fuel");
        }
    }
}
