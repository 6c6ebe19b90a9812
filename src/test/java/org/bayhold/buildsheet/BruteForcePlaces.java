package org.bayhold.buildsheet;

import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import java.util.UUID;
import java.util.stream.Stream;
import org.bayhold.buildsheet.BruteForceRecord.Said;
import org.bayhold.calibration.CoverageLine;
import org.bayhold.catalog.Category;
import org.bayhold.catalog.CategoryMove;
import org.bayhold.catalog.EffectGroup;
import org.bayhold.catalog.Place;
import org.bayhold.vehicle.Baseline;
import org.jspecify.annotations.Nullable;

/** What sits where, found by looking for the last fact that tells (docs/rules.md, rules 3, 9 and 10). */
final class BruteForcePlaces {
    private final BruteForceRecord record;
    private final Baseline baseline;
    private final List<CategoryMove> movesByThen;

    /** What a line of the build sheet shows. */
    record Sheet(
            EffectGroup group,
            Fitted fitted,
            @Nullable Instant since,
            @Nullable UUID recordId,
            @Nullable Instant knownSince) {}

    BruteForcePlaces(
            BruteForceRecord record,
            Baseline baseline,
            List<CategoryMove> moves,
            Instant effectiveAt,
            Instant knownAt) {
        this.record = record;
        this.baseline = baseline;
        this.movesByThen = moves.stream()
                .filter(move -> BruteForceRecord.byThen(move.effectiveAt(), effectiveAt))
                .filter(move -> BruteForceRecord.byThen(move.recordedAt(), knownAt))
                .toList();
    }

    /** What sat at {@code place} when {@code end} things had been said. */
    Fitted sits(Place place, int end) {
        return record.last(end, said -> place.equals(said.place()) && said.found() != null)
                .map(Said::found)
                .orElse(new Fitted(baseline == Baseline.FACTORY ? Fitted.State.FACTORY : Fitted.State.UNKNOWN, null));
    }

    Fitted sits(Place place) {
        return sits(place, record.said.size());
    }

    /** An inspection that finds something else than what was known to be there. */
    boolean contradicts(Said said, Place place) {
        Fitted before = sits(place, said.at());
        return said.isInspection() && before.state() != Fitted.State.UNKNOWN && !before.equals(said.found());
    }

    /** An inspection that only confirms did not put there what sits there, and neither did an adjustment. */
    private Optional<Stamp> putThere(Place place) {
        return record.last(said -> place.equals(said.place())
                        && said.found() != null
                        && !(said.isInspection() && sits(place, said.at()).equals(said.found())))
                .map(said -> said.fact().stamp());
    }

    Map<Place, Sheet> buildSheet() {
        Map<Place, Sheet> sheet = new LinkedHashMap<>();
        for (Place place : inOrder(List.of())) {
            Optional<Stamp> by = putThere(place);
            sheet.put(
                    place,
                    new Sheet(
                            group(place.category()),
                            sits(place),
                            by.map(Stamp::effectiveAt).orElse(null),
                            by.map(Stamp::id).orElse(null),
                            by.map(Stamp::recordedAt).orElse(null)));
        }
        return sheet;
    }

    /** Every category with an effect, and every other place that the record or {@code coverage} names. */
    List<Place> inOrder(List<CoverageLine> coverage) {
        List<Place> named = Stream.concat(
                        record.said.stream().flatMap(said -> Stream.ofNullable(said.place())),
                        coverage.stream().map(CoverageLine::place))
                .distinct()
                .toList();
        List<Place> all = new ArrayList<>();
        for (Category category : Category.values()) {
            Place main = new Place(category, null);
            if (hasEffect(category) || named.contains(main)) {
                all.add(main);
            }
            TreeSet<String> positions = new TreeSet<>();
            named.stream()
                    .filter(place -> place.category() == category && place.position() != null)
                    .forEach(place -> positions.add(place.position()));
            positions.forEach(position -> all.add(new Place(category, position)));
        }
        return all;
    }

    boolean hasEffect(Category category) {
        return group(category) != EffectGroup.NO_EFFECT;
    }

    /** A category born in NO_EFFECT that a manager moved out of it is unsorted. */
    EffectGroup group(Category category) {
        for (CategoryMove move : movesByThen) {
            if (move.category() == category && movesByThen.stream().noneMatch(other -> outdoes(other, move))) {
                return move.noEffect()
                        ? EffectGroup.NO_EFFECT
                        : category.born() == EffectGroup.NO_EFFECT ? EffectGroup.UNSORTED : category.born();
            }
        }
        return category.born();
    }

    private static boolean outdoes(CategoryMove a, CategoryMove b) {
        return a.category() == b.category()
                && (a.effectiveAt().isAfter(b.effectiveAt())
                        || (a.effectiveAt().equals(b.effectiveAt())
                                && a.recordedAt().isAfter(b.recordedAt())));
    }
}
