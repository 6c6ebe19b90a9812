package org.bayhold.calibration;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.UUID;
import org.bayhold.catalog.AttributeText;
import org.bayhold.catalog.Catalog;
import org.bayhold.catalog.Category;
import org.bayhold.catalog.PartSpec;
import org.bayhold.journal.Text;
import org.bayhold.page.Form;
import org.bayhold.refusal.Refusal;
import org.springframework.stereotype.Component;
import tools.jackson.databind.json.JsonMapper;

/** Makes the request to issue a revision of what was typed. */
@Component
class CalibrationForms {
    private final Catalog catalog;
    private final JsonMapper json;

    CalibrationForms(Catalog catalog, JsonMapper json) {
        this.catalog = catalog;
        this.json = json;
    }

    /** @param lines takes the number of the page's line for each line of the request's coverage */
    CalibrationRequest read(Form form, List<Integer> lines) {
        Purpose purpose = form.choice("purpose", Purpose.class);
        return new CalibrationRequest(
                form.required("name"),
                form.required("revision"),
                form.required("ecuHardware"),
                form.text("calid"),
                form.text("cvn"),
                form.text("fileSha256"),
                purpose == null ? Purpose.NORMAL : purpose,
                form.text("limits"),
                coverage(form, lines),
                AttributeText.read(form, "assumes", json),
                form.decimal("boostTargetKpa"),
                form.text("note"));
    }

    static String field(int line, String name) {
        return "lines[" + line + "]." + name;
    }

    private List<CalibrationRequest.Line> coverage(Form form, List<Integer> lines) {
        List<CalibrationRequest.Line> coverage = new ArrayList<>();
        for (int i = 0; i < form.count("lines"); i++) {
            List<PartSpec> parts = parts(form, field(i, "parts"));
            Category chosen = form.choice(field(i, "category"), Category.class);
            Category category =
                    chosen == null && !parts.isEmpty() ? parts.get(0).category() : chosen;
            if (category != null) {
                lines.add(i);
                coverage.add(new CalibrationRequest.Line(
                        category,
                        form.text(field(i, "position")),
                        parts.stream().map(PartSpec::id).toList(),
                        form.checked(field(i, "factoryAllowed")),
                        form.checked(field(i, "noneAllowed"))));
            }
        }
        return coverage;
    }

    /** Each part stands on a line of its own. */
    private List<PartSpec> parts(Form form, String field) {
        List<PartSpec> parts = new ArrayList<>();
        for (String name : form.value(field).lines().toList()) {
            String text = Text.strip(name);
            List<PartSpec> named = text == null ? List.of() : catalog.named(null, text);
            if (named.size() == 1) {
                parts.add(named.get(0));
            } else if (text != null) {
                form.refused(Refusal.invalid(
                        field, named.isEmpty() ? "calibrations.no-such-part" : "calibrations.which-part", text));
            }
        }
        return parts;
    }

    /** Fills a form so that it covers these parts, for the car that somebody comes from; says how many lines it has. */
    int cover(Form form, List<UUID> partIds) {
        List<PartSpec> parts = catalog.specs(partIds).values().stream()
                .sorted(Comparator.comparing(PartSpec::category))
                .toList();
        for (int i = 0; i < parts.size(); i++) {
            PartSpec part = parts.get(i);
            form.with(field(i, "category"), part.category().name())
                    .with(field(i, "parts"), part.maker() + " " + part.partNumber() + " " + part.specRevision());
        }
        return parts.size();
    }

    /** The page's name for a field of the request. */
    static String ofPage(String field, List<Integer> lines) {
        if (!field.startsWith("coverage[")) {
            return field.startsWith("assumes.") ? "assumes" : field;
        }
        int end = field.indexOf(']');
        int line = lines.get(Integer.parseInt(field.substring("coverage[".length(), end)));
        String name = field.substring(end + 1);
        return field(line, name.isEmpty() ? "category" : name.equals(".partSpecIds") ? "parts" : name.substring(1));
    }
}
