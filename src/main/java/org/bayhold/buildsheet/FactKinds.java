package org.bayhold.buildsheet;

import java.util.Arrays;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** The name of each kind of fact in journal, database and API: PartChanged is PART_CHANGED. */
final class FactKinds {
    private static final Map<String, Class<?>> BY_NAME = Arrays.stream(Fact.class.getPermittedSubclasses())
            .collect(Collectors.toUnmodifiableMap(FactKinds::name, Function.identity()));

    private FactKinds() {}

    static String of(Fact fact) {
        return name(fact.getClass());
    }

    /** The record class of a kind; null where the kind is none of a fact (a registration, an amendment). */
    @SuppressWarnings("unchecked") // the map holds nothing but permitted subclasses
    static @Nullable Class<? extends Fact> named(String kind) {
        return (Class<? extends Fact>) BY_NAME.get(kind);
    }

    static Set<String> all() {
        return BY_NAME.keySet();
    }

    static String name(Class<?> type) {
        return type.getSimpleName().replaceAll("(?<=[a-z])(?=[A-Z])", "_").toUpperCase(Locale.ROOT);
    }
}
