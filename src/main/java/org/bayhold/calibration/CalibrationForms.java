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
import org.jspecify.annotations.Nullable;
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

    /** The numbers that the page gives to the lines of coverage and to the maps of the request, which leaves out empty ones. */
    record Numbers(List<Integer> lines, List<Integer> maps) {
        Numbers() {
            this(new ArrayList<>(), new ArrayList<>());
        }
    }

    /** @param numbers takes the page's numbers */
    CalibrationRequest read(Form form, Numbers numbers) {
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
                coverage(form, numbers.lines()),
                maps(form, numbers.maps()),
                AttributeText.read(form, "assumes", json),
                form.decimal("boostTargetKpa"),
                form.text("note"));
    }

    static String field(int line, String name) {
        return "lines[" + line + "]." + name;
    }

    private static String mapField(int map, String name) {
        return "maps[" + map + "]." + name;
    }

    private List<CalibrationRequest.Line> coverage(Form form, List<Integer> lines) {
        List<CalibrationRequest.Line> coverage = new ArrayList<>();
        for (int i = 0; i < form.count("lines"); i++) {
            List<PartSpec> parts = parts(form, field(i, "parts"), null);
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

    /** A map of which nothing was typed is none. */
    private List<MapRequest> maps(Form form, List<Integer> numbers) {
        List<MapRequest> maps = new ArrayList<>();
        for (int i = 0; i < form.count("maps"); i++) {
            List<PartSpec> fuels = parts(form, mapField(i, "fuels"), Category.FUEL);
            boolean factoryFuel = form.checked(mapField(i, "factoryFuel"));
            String note = form.text(mapField(i, "note"));
            String name = form.text(mapField(i, "name"));
            if (name != null || note != null || factoryFuel || form.text(mapField(i, "fuels")) != null) {
                numbers.add(i);
                maps.add(new MapRequest(
                        form.required(mapField(i, "name")),
                        fuels.stream().map(PartSpec::id).toList(),
                        factoryFuel,
                        note));
            }
        }
        return maps;
    }

    /** Each part stands on a line of its own. */
    private List<PartSpec> parts(Form form, String field, @Nullable Category category) {
        List<PartSpec> parts = new ArrayList<>();
        for (String name : form.value(field).lines().toList()) {
            String text = Text.strip(name);
            List<PartSpec> named = text == null ? List.of() : catalog.named(category, text);
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
    static String ofPage(String field, Numbers numbers) {
        int end = field.indexOf(']');
        if (field.startsWith("coverage[")) {
            String name = field.substring(end + 1);
            return field(
                    numbers.lines().get(number(field, end)),
                    name.isEmpty() ? "category" : name.startsWith(".partSpecIds") ? "parts" : name.substring(1));
        }
        if (field.startsWith("maps[")) {
            String name = field.substring(end + 2);
            return mapField(numbers.maps().get(number(field, end)), name.startsWith("fuels") ? "fuels" : name);
        }
        return field.startsWith("assumes.") ? "assumes" : field;
    }

    private static int number(String field, int end) {
        return Integer.parseInt(field.substring(field.indexOf('[') + 1, end));
    }
}
