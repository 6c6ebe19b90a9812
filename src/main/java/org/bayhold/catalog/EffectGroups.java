package org.bayhold.catalog;

import java.time.Instant;
import java.util.Comparator;
import java.util.List;

/** The effect group of each category for any two times. */
public record EffectGroups(List<CategoryMove> moves) {
    public static final EffectGroups AS_BORN = new EffectGroups(List.of());

    public EffectGroups {
        moves = List.copyOf(moves);
    }

    /** The group at {@code effectiveAt} as known at {@code knownAt}; a category moved out of NO_EFFECT is UNSORTED unless born elsewhere. */
    public EffectGroup of(Category category, Instant effectiveAt, Instant knownAt) {
        if (moves.isEmpty()) {
            return category.born();
        }
        return moves.stream()
                .filter(m -> m.category() == category)
                .filter(m ->
                        !m.recordedAt().isAfter(knownAt) && !m.effectiveAt().isAfter(effectiveAt))
                .max(Comparator.comparing(CategoryMove::effectiveAt).thenComparing(CategoryMove::recordedAt))
                .map(m -> m.noEffect() ? EffectGroup.NO_EFFECT : withEffect(category))
                .orElse(category.born());
    }

    private static EffectGroup withEffect(Category category) {
        return category.born() == EffectGroup.NO_EFFECT ? EffectGroup.UNSORTED : category.born();
    }
}
