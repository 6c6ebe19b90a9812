package org.bayhold.buildsheet;

import java.time.Instant;
import java.util.UUID;
import org.bayhold.catalog.EffectGroup;
import org.bayhold.catalog.Place;
import org.jspecify.annotations.Nullable;

/**
 * One place of a build sheet.
 *
 * @param since effective time of the fact that put it there; null for the baseline
 * @param recordId that fact; null for the baseline
 * @param knownSince when that fact was recorded; null for the baseline
 */
public record BuildLine(
        Place place,
        EffectGroup group,
        Fitted fitted,
        @Nullable Instant since,
        @Nullable UUID recordId,
        @Nullable Instant knownSince) {
    public boolean hasEffect() {
        return group != EffectGroup.NO_EFFECT;
    }
}
