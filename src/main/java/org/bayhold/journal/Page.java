package org.bayhold.journal;

import java.util.List;
import java.util.Locale;
import java.util.UUID;
import java.util.function.Function;
import org.bayhold.refusal.Refusal;
import org.jspecify.annotations.Nullable;

/**
 * One page of a list in the order of its ids.
 *
 * @param next what to send as {@code after} for the page that follows; null on the last one
 */
public record Page<T>(List<T> items, @Nullable UUID next) {
    private static final int USUAL = 50;
    private static final int MOST = 200;
    private static final int LONGEST_QUERY = 200;
    private static final UUID BEFORE_ALL = new UUID(0, 0);

    public Page {
        items = List.copyOf(items);
    }

    /** A whole list, on one page. */
    public static <T> Page<T> whole(List<T> items) {
        return new Page<>(items, null);
    }

    /** @param found up to one more than {@code size}, by which it is known that a page follows */
    public static <T> Page<T> of(List<T> found, int size, Function<T, UUID> id) {
        if (found.size() <= size) {
            return whole(found);
        }
        List<T> items = found.subList(0, size);
        return new Page<>(items, id.apply(items.get(size - 1)));
    }

    /** How many items a page has, as asked for. */
    public static int size(@Nullable Integer limit) {
        if (limit == null) {
            return USUAL;
        }
        if (limit < 1 || limit > MOST) {
            throw Refusal.invalid("limit", "page.limit", MOST);
        }
        return limit;
    }

    public static UUID after(@Nullable UUID after) {
        return after == null ? BEFORE_ALL : after;
    }

    /** A LIKE pattern, with {@code !} as its escape, that finds the text anywhere, in lower case. */
    public static String like(@Nullable String query) {
        if (query == null || query.isBlank()) {
            return "%";
        }
        if (query.length() > LONGEST_QUERY || query.indexOf('\0') >= 0) {
            throw Refusal.invalid("q", "page.query", LONGEST_QUERY);
        }
        String literal = query.strip()
                .toLowerCase(Locale.ROOT)
                .replace("!", "!!")
                .replace("%", "!%")
                .replace("_", "!_");
        return "%" + literal + "%";
    }
}
