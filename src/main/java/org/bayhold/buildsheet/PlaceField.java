package org.bayhold.buildsheet;

import java.util.stream.Stream;
import org.bayhold.catalog.Category;
import org.bayhold.catalog.Place;
import org.jspecify.annotations.Nullable;

/** A place as pages send it: a category, or a category, a colon and a position. */
final class PlaceField {
    private PlaceField() {}

    static String value(Place place) {
        return place.category() + (place.position() == null ? "" : ":" + place.position());
    }

    /** Null where nothing was chosen, or no page offers it. */
    static @Nullable Place read(String value) {
        int colon = value.indexOf(':');
        String name = colon < 0 ? value : value.substring(0, colon);
        return Stream.of(Category.values())
                .filter(category -> category.name().equals(name))
                .findFirst()
                .map(category -> new Place(category, colon < 0 ? null : value.substring(colon + 1)))
                .orElse(null);
    }
}
