package org.bayhold.buildsheet;

import java.time.Instant;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import org.bayhold.catalog.Category;
import org.bayhold.catalog.EffectGroup;
import org.bayhold.catalog.EffectGroups;
import org.bayhold.catalog.Place;
import org.bayhold.vehicle.Baseline;

/** What sits at each place of a car while it is folded. A place that nothing was said of is as the baseline says. */
final class BuildSheet {
    /** Of a car of which nothing is on record yet, where no category was moved: what every fold begins with. */
    private static final Map<Baseline, SortedMap<Place, BuildLine>> AS_BORN = asBorn();

    private final Baseline baseline;
    private final EffectGroups groups;
    private final Instant effectiveAt;
    private final Instant knownAt;
    private final TreeMap<Place, BuildLine> lines = new TreeMap<>();

    BuildSheet(Baseline baseline, EffectGroups groups, Instant effectiveAt, Instant knownAt) {
        this.baseline = baseline;
        this.groups = groups;
        this.effectiveAt = effectiveAt;
        this.knownAt = knownAt;
        if (groups.moves().isEmpty()) {
            // a sorted map goes into an empty one at once
            lines.putAll(AS_BORN.get(baseline));
        } else {
            for (Category category : Category.values()) {
                if (groupOf(category) != EffectGroup.NO_EFFECT) {
                    Place place = Place.of(category);
                    lines.put(place, asBaseline(place));
                }
            }
        }
    }

    /** By category and position. */
    List<BuildLine> lines() {
        return List.copyOf(lines.values());
    }

    Fitted fittedAt(Place place) {
        return lines.computeIfAbsent(place, this::asBaseline).fitted();
    }

    void put(Stamp stamp, Place place, Fitted fitted) {
        lines.put(
                place,
                new BuildLine(
                        place, groupOf(place.category()), fitted, stamp.effectiveAt(), stamp.id(), stamp.recordedAt()));
    }

    EffectGroup groupOf(Category category) {
        return groups.of(category, effectiveAt, knownAt);
    }

    private BuildLine asBaseline(Place place) {
        return asBaseline(place, groupOf(place.category()), baseline);
    }

    private static BuildLine asBaseline(Place place, EffectGroup group, Baseline baseline) {
        Fitted fitted = switch (baseline) {
            case FACTORY -> Fitted.FACTORY;
            case UNKNOWN -> Fitted.UNKNOWN;
        };
        return new BuildLine(place, group, fitted, null, null, null);
    }

    private static Map<Baseline, SortedMap<Place, BuildLine>> asBorn() {
        Map<Baseline, SortedMap<Place, BuildLine>> born = new EnumMap<>(Baseline.class);
        for (Baseline baseline : Baseline.values()) {
            SortedMap<Place, BuildLine> its = new TreeMap<>();
            for (Category category : Category.values()) {
                if (category.born() != EffectGroup.NO_EFFECT) {
                    Place place = Place.of(category);
                    its.put(place, asBaseline(place, category.born(), baseline));
                }
            }
            born.put(baseline, its);
        }
        return born;
    }
}
