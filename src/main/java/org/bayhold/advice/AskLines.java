package org.bayhold.advice;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import org.bayhold.advice.AdviceRequest.FittedPart;
import org.bayhold.advice.AdviceRequest.Proposed;
import org.bayhold.buildsheet.Fact.Action;
import org.bayhold.catalog.Catalog;
import org.bayhold.catalog.Category;
import org.bayhold.catalog.PartSpec;
import org.bayhold.page.Form;
import org.bayhold.refusal.Refusal;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/** Finds out which parts the words mean that are typed during a telephone call: what is nearly clear is taken, and said. */
@Component
class AskLines {
    static final String PROPOSED = "lines";
    static final String FITTED = "fitted";
    private static final String NOT_IN_CATALOGUE = "none";
    private static final int CANDIDATES = 8;
    private static final int MOST = 30;

    private final Catalog catalog;

    AskLines(Catalog catalog) {
        this.catalog = catalog;
    }

    /**
     * A line as the page shows it.
     *
     * @param name of its fields, up to the dot
     * @param taken the part that the words were taken for; null where they name none, or several
     * @param candidates the parts that they may mean, where the page asks which
     */
    record Line(String name, @Nullable PartSpec taken, List<PartSpec> candidates) {}

    /** A line that says something. */
    private record Typed(
            Line line,
            Action action,
            @Nullable Category category,
            @Nullable String position) {}

    /** The lines of a group, and an empty one for what comes next. */
    List<Line> shown(Form form, String group) {
        List<Line> lines = new ArrayList<>();
        for (Typed typed : typed(form, group)) {
            lines.add(typed.line());
        }
        lines.add(new Line(group + "[" + nextNumber(form, group) + "].", null, List.of()));
        return lines;
    }

    /** What is proposed; what is still open is noted in the form. */
    List<Proposed> proposed(Form form) {
        return typed(form, PROPOSED).stream()
                .filter(typed -> isClear(form, typed))
                .map(typed -> new Proposed(typed.category(), typed.position(), typed.action(), idOf(typed), null))
                .toList();
    }

    /** What is on a car that is not in the register. */
    List<FittedPart> fitted(Form form) {
        return typed(form, FITTED).stream()
                .filter(typed -> isClear(form, typed))
                .map(typed -> new FittedPart(typed.category(), typed.position(), null, idOf(typed)))
                .toList();
    }

    private List<Typed> typed(Form form, String group) {
        List<Typed> typed = new ArrayList<>();
        for (int i = 0; i < Math.min(form.count(group), MOST); i++) {
            String name = group + "[" + i + "].";
            if (Stream.of("part", "place")
                    .anyMatch(field -> !form.value(name + field).isBlank())) {
                typed.add(read(form, name));
            }
        }
        return typed;
    }

    private static int nextNumber(Form form, String group) {
        int next = Math.min(form.count(group), MOST);
        while (next > 0
                && form.value(group + "[" + (next - 1) + "].part").isBlank()
                && form.value(group + "[" + (next - 1) + "].place").isBlank()) {
            next--;
        }
        return next;
    }

    private Typed read(Form form, String name) {
        Action chosen = form.choice(name + "action", Action.class);
        Action action = chosen == null ? Action.FIT : chosen;
        Category place = form.choice(name + "place", Category.class);
        String words = form.text(name + "part");
        List<PartSpec> meant = words == null ? List.of() : meant(form, name, place, words);
        PartSpec taken = meant.size() == 1 ? meant.get(0) : null;
        return new Typed(
                new Line(name, taken, meant.size() > 1 ? meant : List.of()),
                action,
                place == null && taken != null ? taken.category() : place,
                form.text(name + "position"));
    }

    /** The part that was chosen, or that goes by what was typed; several where the page has to ask; none where it is unknown. */
    private List<PartSpec> meant(Form form, String name, @Nullable Category place, String words) {
        if (form.value(name + "chosen").equals(NOT_IN_CATALOGUE)) {
            return List.of();
        }
        UUID chosen = form.id(name + "chosen");
        Optional<PartSpec> picked = chosen == null ? Optional.empty() : catalog.spec(chosen);
        if (picked.isPresent()) {
            return List.of(picked.get());
        }
        List<PartSpec> named = catalog.named(place, words);
        return named.isEmpty() ? catalog.find(place, words, CANDIDATES) : named;
    }

    private static boolean isClear(Form form, Typed typed) {
        String part = typed.line().name() + "part";
        if (!typed.line().candidates().isEmpty()) {
            form.refused(Refusal.invalid(part, "ask.which-part"));
            return false;
        }
        if (typed.category() == null) {
            form.refused(Refusal.invalid(typed.line().name() + "place", "ask.which-place"));
            return false;
        }
        return true;
    }

    private static @Nullable UUID idOf(Typed typed) {
        PartSpec taken = typed.line().taken();
        return taken == null || typed.action() != Action.FIT ? null : taken.id();
    }
}
