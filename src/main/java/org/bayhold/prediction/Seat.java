package org.bayhold.prediction;

import org.bayhold.catalog.Category;
import org.bayhold.catalog.EffectGroup;
import org.bayhold.catalog.Place;

/**
 * One place of a car: what sits there, and what the calibration was written for.
 *
 * @param group the effect group of the place at the moment that is asked about
 * @param calibratedFor where the calibration names several parts, the first
 * @param differs the calibration was not written for what is fitted; two parts may differ and have equal attributes
 */
public record Seat(Place place, EffectGroup group, Side fitted, Side calibratedFor, boolean differs) {
    Category category() {
        return place.category();
    }

    /** What the ratio of this place compares with: parts that are equal to the calibration are one part. */
    Side reference() {
        return differs ? calibratedFor : fitted;
    }
}
