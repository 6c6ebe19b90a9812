package org.bayhold.buildsheet;

import jakarta.validation.ConstraintViolation;
import jakarta.validation.Validator;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.UUID;
import java.util.stream.Stream;
import org.bayhold.catalog.Catalog;
import org.bayhold.catalog.Category;
import org.bayhold.catalog.PartSpec;
import org.bayhold.catalog.Place;
import org.bayhold.page.Form;
import org.bayhold.refusal.Refusal;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/** Finds out which parts and places the typed lines mean. What the catalogue does not know is asked once, never refused. */
@Component
class InstallLines {
    private static final String NOT_IN_CATALOGUE = "none";
    private static final int CANDIDATES = 8;

    private final Catalog catalog;
    private final Validator validator;

    InstallLines(Catalog catalog, Validator validator) {
        this.catalog = catalog;
        this.validator = validator;
    }

    /** One part change, with the number of the line that it was typed in. */
    record Typed(int line, PartChangeRequest request) {}

    /** What all lines have in common. */
    private record Common(
            @Nullable Instant at,
            @Nullable Integer odometerKm,
            Fact.Source source,
            @Nullable String performedBy) {}

    static String field(int line, String name) {
        return "lines[" + line + "]." + name;
    }

    /** One request for each line that says something; what is wrong or to be asked is noted in the form. */
    List<Typed> read(Form form, @Nullable Instant at) {
        Fact.Source source = form.choice("source", Fact.Source.class);
        Common common = new Common(
                at, form.integer("odometerKm"), source == null ? Fact.Source.SHOP : source, form.text("performedBy"));
        List<Typed> typed = new ArrayList<>();
        int said = 0;
        for (int line = 0; line < form.count("lines"); line++) {
            if (says(form, line)) {
                said++;
                PartChangeRequest request = read(form, line, common);
                if (request != null) {
                    check(form, line, request);
                    typed.add(new Typed(line, request));
                }
            }
        }
        if (said == 0) {
            form.refused(Refusal.invalid(field(0, "part"), "install.which-place-or-part"));
        }
        return typed;
    }

    /** By the line's number: the parts that its words may mean, where the page asks which. */
    Map<Integer, List<PartSpec>> candidates(Form form) {
        Map<Integer, List<PartSpec>> candidates = new TreeMap<>();
        for (int line = 0; line < form.count("lines"); line++) {
            String part = form.value(field(line, "part"));
            boolean asked = form.error(field(line, "part")) != null
                    || !form.value(field(line, "chosen")).isEmpty();
            if (asked && !part.isBlank()) {
                candidates.put(line, catalog.find(category(form.value(field(line, "place"))), part, CANDIDATES));
            }
        }
        return candidates;
    }

    private static boolean says(Form form, int line) {
        return Stream.of("part", "place", "note", "serial", "ecuHardware")
                .anyMatch(name -> !form.value(field(line, name)).isBlank());
    }

    private @Nullable PartChangeRequest read(Form form, int line, Common common) {
        Fact.Action chosen = form.choice(field(line, "action"), Fact.Action.class);
        Fact.Action action = chosen == null ? Fact.Action.FIT : chosen;
        Category category = category(form.value(field(line, "place")));
        String part = form.text(field(line, "part"));
        boolean unlisted = form.value(field(line, "chosen")).equals(NOT_IN_CATALOGUE);
        PartSpec spec = unlisted ? null : spec(form, line, category, part);
        if (action == Fact.Action.FIT && spec == null) {
            askWhatItIs(form, line, part, category, unlisted);
        } else if (category == null && spec == null) {
            form.refused(Refusal.invalid(field(line, "place"), "install.which-place"));
        }
        Category place = category == null && spec != null ? spec.category() : category;
        if (place == null) {
            return null;
        }
        return new PartChangeRequest(
                place,
                position(form, line),
                action,
                spec == null || action != Fact.Action.FIT ? null : spec.id(),
                form.text(field(line, "serial")),
                form.text(field(line, "ecuHardware")),
                common.at(),
                common.odometerKm(),
                common.source(),
                common.performedBy(),
                note(form.text(field(line, "note")), spec == null ? part : null));
    }

    /** A part that was fitted and is none of the catalogue's so far. */
    private void askWhatItIs(
            Form form, int line, @Nullable String part, @Nullable Category category, boolean unlisted) {
        if (part == null) {
            if (form.text(field(line, "note")) == null) {
                form.refused(Refusal.invalid(field(line, "part"), "install.describe"));
            }
        } else if (!unlisted) {
            boolean nothing = catalog.find(category, part, 1).isEmpty();
            form.refused(
                    Refusal.invalid(field(line, "part"), nothing ? "install.not-in-catalogue" : "install.which-part"));
        }
        if (category == null) {
            form.refused(Refusal.invalid(field(line, "place"), "install.which-place"));
        }
    }

    /** The part that was chosen, or the only one that goes by what was typed. */
    private @Nullable PartSpec spec(Form form, int line, @Nullable Category category, @Nullable String part) {
        UUID chosen = form.id(field(line, "chosen"));
        if (chosen != null) {
            return catalog.spec(chosen).orElse(null);
        }
        List<PartSpec> named = part == null ? List.of() : catalog.named(category, part);
        return named.size() == 1 ? named.get(0) : null;
    }

    /** Words that name no part of the catalogue are kept: they are all that anybody knows of it. */
    private static @Nullable String note(@Nullable String note, @Nullable String words) {
        return words == null ? note : note == null ? words : words + "\n" + note;
    }

    private static @Nullable Category category(String value) {
        Place place = PlaceField.read(value);
        return place == null ? null : place.category();
    }

    private static @Nullable String position(Form form, int line) {
        String typed = form.text(field(line, "position"));
        Place place = PlaceField.read(form.value(field(line, "place")));
        return typed == null && place != null ? place.position() : typed;
    }

    private void check(Form form, int line, PartChangeRequest request) {
        for (ConstraintViolation<PartChangeRequest> violation : validator.validate(request)) {
            String name = violation.getPropertyPath().toString();
            String field = List.of("odometerKm", "performedBy").contains(name) ? name : field(line, name);
            if (form.error(field) == null) {
                form.refused(Refusal.invalid(field, "form.limit", violation.getMessage()));
            }
        }
    }
}
