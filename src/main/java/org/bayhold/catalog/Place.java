package org.bayhold.catalog;

import java.util.Comparator;
import org.jspecify.annotations.Nullable;

/**
 * Where one part sits. A car may carry several parts of one category at named positions ("second rail", "left").
 *
 * @param position null for the only, or the main, place of the category
 */
public record Place(Category category, @Nullable String position) implements Comparable<Place> {
    private static final Comparator<Place> ORDER = Comparator.comparing(Place::category)
            .thenComparing(Place::position, Comparator.nullsFirst(Comparator.naturalOrder()));

    public static Place of(Category category) {
        return new Place(category, null);
    }

    @Override
    public int compareTo(Place other) {
        return ORDER.compare(this, other);
    }
}
