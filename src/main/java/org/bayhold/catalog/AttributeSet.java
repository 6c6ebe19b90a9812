package org.bayhold.catalog;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.stream.Collectors;
import org.bayhold.page.Units;
import org.bayhold.refusal.Code;
import org.bayhold.refusal.Refusal;

/** The attributes that something may carry, by name. */
public final class AttributeSet {
    /** A name that is this close to one of the set is that one, misspelt. */
    private static final int MISSPELT = 2;

    private static final int LONGEST_NAME = 60;
    /** Each stranger's refusal names all that could be recorded: an answer must not outgrow its request by hundreds. */
    private static final int MOST = 60;

    private final Map<String, Attribute> byName = new LinkedHashMap<>();

    public AttributeSet(Collection<? extends Attribute> attributes) {
        attributes.forEach(attribute -> byName.put(attribute.name(), attribute));
    }

    public List<Attribute> attributes() {
        return List.copyOf(byName.values());
    }

    /** What is recorded, as somebody reads it: a figure with its unit, a table row by row, anything else as it is. */
    public Map<String, String> show(Map<String, Object> recorded, Units units) {
        Map<String, String> shown = new LinkedHashMap<>();
        recorded.forEach((name, value) -> {
            Attribute attribute = byName.get(name);
            shown.put(name, attribute == null ? String.valueOf(value) : attribute.show(value, units));
        });
        return shown;
    }

    /** Refuses values that are wrong, and every name that is not in the set. */
    public void holdAll(String field, Map<String, Object> values) {
        hold(
                field,
                values,
                (name, at) -> Optional.of(new Refusal.Reason(at, "attributes.unknown", List.of(name, allowed()))));
    }

    /** Refuses values that are wrong, and names that are one of the set misspelt; other names are somebody's notes. */
    public void holdKnown(String field, Map<String, Object> values) {
        hold(field, values, (name, at) -> Optional.empty());
    }

    private void hold(
            String field, Map<String, Object> values, BiFunction<String, String, Optional<Refusal.Reason>> stranger) {
        if (values.size() > MOST) {
            throw Refusal.invalid(field, "attributes.too-many", MOST);
        }
        List<Refusal.Reason> problems = new ArrayList<>();
        values.forEach((name, value) -> {
            if (name.isBlank() || name.length() > LONGEST_NAME) {
                throw Refusal.invalid(field, "attributes.name", LONGEST_NAME);
            }
            String at = field + "." + name;
            Attribute attribute = byName.get(name);
            Optional<Refusal.Reason> problem = attribute != null
                    ? attribute.problem(at, value)
                    : misspelt(name, at).or(() -> stranger.apply(name, at));
            problem.ifPresent(problems::add);
        });
        if (!problems.isEmpty()) {
            throw new Refusal(Code.INVALID, problems);
        }
    }

    private Optional<Refusal.Reason> misspelt(String name, String at) {
        return meantBy(name)
                .map(meant ->
                        new Refusal.Reason(at, "attributes.misspelt", List.of(name, meant.name(), meant.allowed())));
    }

    /** The attribute that somebody meant who wrote this. */
    Optional<Attribute> meantBy(String name) {
        String written = plain(name);
        return byName.values().stream()
                .filter(attribute -> distance(written, plain(attribute.name())) <= MISSPELT)
                .min(Comparator.comparingInt(attribute -> distance(written, plain(attribute.name()))));
    }

    /** Every name with what its value may be, for people. */
    private String allowed() {
        return byName.values().stream()
                .map(attribute -> attribute.name() + " (" + attribute.allowed() + ")")
                .collect(Collectors.joining("; "));
    }

    private static String plain(String name) {
        return name.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]", "");
    }

    /** Levenshtein's distance. */
    private static int distance(String one, String other) {
        int[] row = new int[other.length() + 1];
        for (int j = 0; j <= other.length(); j++) {
            row[j] = j;
        }
        for (int i = 1; i <= one.length(); i++) {
            int diagonal = row[0];
            row[0] = i;
            for (int j = 1; j <= other.length(); j++) {
                int swap = diagonal + (one.charAt(i - 1) == other.charAt(j - 1) ? 0 : 1);
                diagonal = row[j];
                row[j] = Math.min(swap, 1 + Math.min(row[j], row[j - 1]));
            }
        }
        return row[other.length()];
    }
}
