package org.bayhold.form;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.bayhold.refusal.Problems;
import org.bayhold.refusal.Refusal;

/** What is wrong with a form: sentences by field, in the order of the refusal; those of no field stand under {@code ""}. */
public record Wrong(Map<String, List<String>> byField) {
    static final Wrong NOTHING = new Wrong(Map.of());

    static Wrong of(Refusal refusal, Problems problems) {
        Map<String, List<String>> byField = new LinkedHashMap<>();
        refusal.reasons()
                .forEach(reason -> byField.computeIfAbsent(
                                reason.field() == null ? "" : reason.field(), field -> new ArrayList<>())
                        .add(problems.sentence(reason)));
        return new Wrong(byField);
    }

    public boolean any() {
        return !byField.isEmpty();
    }

    public List<String> at(String field) {
        return byField.getOrDefault(field, List.of());
    }

    /** What concerns no field that the page shows. */
    public List<String> elsewhere(List<String> shown) {
        return byField.entrySet().stream()
                .filter(entry -> !shown.contains(entry.getKey()))
                .flatMap(entry -> entry.getValue().stream())
                .distinct()
                .toList();
    }
}
