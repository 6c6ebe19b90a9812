package org.bayhold.calibration;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.bayhold.catalog.Catalog;
import org.bayhold.catalog.Category;
import org.bayhold.catalog.PartSpec;
import org.bayhold.form.Forms;
import org.bayhold.form.Typed;
import org.bayhold.journal.Text;
import org.bayhold.refusal.Refusal;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/** Makes the request to issue a revision of what was typed. */
@Component
class CalibrationForms {
    private final Forms forms;
    private final Catalog catalog;

    CalibrationForms(Forms forms, Catalog catalog) {
        this.forms = forms;
        this.catalog = catalog;
    }

    CalibrationRequest read(CalibrationForm form) {
        Typed typed = forms.read();
        CalibrationRequest request = new CalibrationRequest(
                typed.needed("name", form.name()),
                typed.needed("revision", form.revision()),
                typed.needed("ecuHardware", form.ecuHardware()),
                typed.text("calid", form.calid()),
                typed.text("cvn", form.cvn()),
                typed.text("fileSha256", form.fileSha256()),
                typed.choice("purpose", form.purpose(), Purpose.class, Purpose.NORMAL),
                typed.text("limits", form.limits()),
                coverage(typed, form.typedLines()),
                Map.of(),
                typed.number("boostTargetKpa", form.boostTargetKpa()),
                typed.text("note", form.note()));
        typed.check(request, "");
        typed.done();
        return request;
    }

    private List<CalibrationRequest.Line> coverage(Typed typed, List<CalibrationForm.Line> lines) {
        List<CalibrationRequest.Line> coverage = new ArrayList<>();
        for (int i = 0; i < lines.size(); i++) {
            CalibrationForm.Line line = lines.get(i);
            String at = "lines[" + i + "].";
            List<PartSpec> parts = parts(typed, at + "parts", line.parts());
            Category category = typed.choice(at + "category", line.category(), Category.class);
            if (category == null && !parts.isEmpty()) {
                category = parts.get(0).category();
            }
            if (category == null) {
                typed.wrong(at + "category", "form.choose");
            } else {
                coverage.add(new CalibrationRequest.Line(
                        category,
                        typed.text(at + "position", line.position()),
                        parts.stream().map(PartSpec::id).toList(),
                        line.factoryAllowed() != null,
                        line.noneAllowed() != null));
            }
        }
        return coverage;
    }

    private List<PartSpec> parts(Typed typed, String field, @Nullable String names) {
        List<PartSpec> parts = new ArrayList<>();
        for (String name : (names == null ? "" : names).lines().toList()) {
            String text = Text.strip(name);
            if (text != null) {
                List<PartSpec> named = catalog.named(null, text);
                if (named.size() == 1) {
                    parts.add(named.get(0));
                } else {
                    typed.wrong(field, named.isEmpty() ? "calibrations.no-such-part" : "calibrations.which-part", text);
                }
            }
        }
        return parts;
    }

    /** A form that covers these parts, for the car that somebody comes from. */
    CalibrationForm covering(@Nullable String ecuHardware, @Nullable List<UUID> partIds) {
        List<CalibrationForm.Line> lines = catalog.specs(partIds == null ? List.of() : partIds).values().stream()
                .sorted(java.util.Comparator.comparing(PartSpec::category))
                .map(part -> new CalibrationForm.Line(
                        part.category().name(),
                        null,
                        part.maker() + " " + part.partNumber() + " " + part.specRevision(),
                        null,
                        null))
                .toList();
        return new CalibrationForm(null, null, ecuHardware, null, null, null, null, null, null, null, lines);
    }

    /** The page's names for the request's fields. */
    static Refusal named(Refusal refusal) {
        return new Refusal(
                refusal.code(),
                refusal.reasons().stream()
                        .map(reason -> new Refusal.Reason(field(reason.field()), reason.key(), reason.arguments()))
                        .toList());
    }

    private static @Nullable String field(@Nullable String field) {
        return field == null
                ? null
                : field.replaceFirst("^coverage\\[(\\d+)]$", "lines[$1].category")
                        .replaceFirst("^coverage\\[", "lines[")
                        .replaceFirst("\\.partSpecIds$", ".parts");
    }
}
