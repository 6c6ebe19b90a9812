package org.bayhold.buildsheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.UUID;
import org.bayhold.catalog.Catalog;
import org.bayhold.catalog.Category;
import org.bayhold.catalog.PartSpec;
import org.bayhold.form.Typed;
import org.bayhold.journal.Text;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/** Finds out which parts and places the typed lines mean. What the catalogue does not know is asked once, never refused. */
@Component
class InstallLines {
    private static final int CANDIDATES = 8;

    private final Catalog catalog;

    InstallLines(Catalog catalog) {
        this.catalog = catalog;
    }

    /** What all lines have in common. */
    record Common(
            java.time.@Nullable Instant at,
            @Nullable Integer odometerKm,
            Fact.Source source,
            @Nullable String performedBy) {}

    /**
     * What was read.
     *
     * @param requests one for each line that says something, in order
     * @param candidates by the line's number: the parts that its words may mean; a line that is asked about has an entry
     */
    record Read(List<PartChangeRequest> requests, Map<Integer, List<PartSpec>> candidates) {}

    Read read(Typed typed, InstallForm form, Common common) {
        List<PartChangeRequest> requests = new ArrayList<>();
        Map<Integer, List<PartSpec>> candidates = new TreeMap<>();
        List<InstallForm.Line> lines = form.typedLines();
        for (int i = 0; i < lines.size(); i++) {
            InstallForm.Line line = lines.get(i);
            PartChangeRequest request = read(typed, i, line, common, candidates);
            if (request != null) {
                requests.add(request);
                typed.check(request, "lines[" + i + "].");
            }
        }
        return new Read(requests, candidates);
    }

    private @Nullable PartChangeRequest read(
            Typed typed, int number, InstallForm.Line line, Common common, Map<Integer, List<PartSpec>> candidates) {
        String at = "lines[" + number + "].";
        Fact.Action action = typed.choice(at + "action", line.action(), Fact.Action.class, Fact.Action.FIT);
        Category category = category(typed, at + "place", line.place());
        PartSpec spec = spec(typed, at, line, category);
        String part = Text.strip(line.part());
        boolean mustAsk = action == Fact.Action.FIT && spec == null && part != null && !isNotInCatalogue(line);
        if (mustAsk) {
            List<PartSpec> found = catalog.find(category, part, CANDIDATES);
            candidates.put(number, found);
            typed.wrong(at + "part", found.isEmpty() ? "install.not-in-catalogue" : "install.which-part");
        }
        if (category == null && spec == null && typed.isRight(at + "place")) {
            typed.wrong(at + "place", part == null ? "install.which-place-or-part" : "install.which-place");
        }
        if (action == Fact.Action.FIT && part == null && spec == null && Text.strip(line.note()) == null) {
            typed.wrong(at + "part", "install.describe");
        }
        if (mustAsk || (category == null && spec == null)) {
            return null;
        }
        return new PartChangeRequest(
                category == null ? java.util.Objects.requireNonNull(spec).category() : category,
                position(typed, at, line),
                action,
                spec == null || action != Fact.Action.FIT ? null : spec.id(),
                typed.text(at + "serial", line.serial()),
                typed.text(at + "ecuHardware", line.ecuHardware()),
                common.at(),
                common.odometerKm(),
                common.source(),
                common.performedBy(),
                typed.text(at + "note", note(line, spec)));
    }

    private static boolean isNotInCatalogue(InstallForm.Line line) {
        return InstallForm.Line.NOT_IN_CATALOGUE.equals(line.chosen());
    }

    /** The part that was chosen, or the only one that goes by what was typed. */
    private @Nullable PartSpec spec(Typed typed, String at, InstallForm.Line line, @Nullable Category category) {
        String part = Text.strip(line.part());
        if (isNotInCatalogue(line)) {
            return null;
        }
        UUID chosen = typed.id(at + "chosen", line.chosen());
        if (chosen != null) {
            return catalog.spec(chosen).orElse(null);
        }
        if (part == null) {
            return null;
        }
        List<PartSpec> named = catalog.named(category, part);
        return named.size() == 1 ? named.get(0) : null;
    }

    /** Words that name no part of the catalogue are kept: they are all that anybody knows of it. */
    private static @Nullable String note(InstallForm.Line line, @Nullable PartSpec spec) {
        String note = Text.strip(line.note());
        String part = spec == null ? Text.strip(line.part()) : null;
        return part == null ? note : note == null ? part : part + "\n" + note;
    }

    private static @Nullable Category category(Typed typed, String field, @Nullable String place) {
        String text = place == null ? "" : place;
        int colon = text.indexOf(':');
        return typed.choice(field, colon < 0 ? text : text.substring(0, colon), Category.class);
    }

    private static @Nullable String position(Typed typed, String at, InstallForm.Line line) {
        String place = line.place() == null ? "" : line.place();
        int colon = place.indexOf(':');
        String position = typed.text(at + "position", line.position());
        return position != null || colon < 0 ? position : place.substring(colon + 1);
    }
}
