package org.bayhold.prediction;

import java.util.List;
import org.bayhold.catalog.Place;
import org.jspecify.annotations.Nullable;

/**
 * How one number came about.
 *
 * @param place the part that it is of; null where it is of the whole car
 */
public record Step(Formula formula, @Nullable Place place, List<Input> inputs, double value) {
    public Step {
        inputs = List.copyOf(inputs);
    }
}
