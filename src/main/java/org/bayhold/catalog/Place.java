package org.bayhold.catalog;

import java.util.Comparator;
import org.bayhold.journal.Text;
import org.jspecify.annotations.Nullable;

/**
 * Where one part sits. A car may carry several parts of one category at named positions ("second rail", "left").
 *
 * @param position null for the only, or the main, place of the category
 */
public record Place(Category category, @Nullable String position) implements Comparable<Place> {
    private static final Comparator<@Nullable String> POSITIONS = Comparator.nullsFirst(Comparator.naturalOrder());

    public static Place of(Category category) {
        return new Place(category, null);
    }

    /** The place that somebody typed: "Second  Rail" and "second rail" are one. */
    public static Place typed(Category category, @Nullable String position) {
        return new Place(category, Text.alike(position));
    }

    @Override
    public int compareTo(Place other) {
        // every fold sorts by places: no chain of comparators
        int byCategory = category.compareTo(other.category);
        return byCategory != 0 ? byCategory : POSITIONS.compare(position, other.position);
    }
}
