package org.bayhold.buildsheet;

import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.bayhold.calibration.Calibrations;
import org.bayhold.catalog.Catalog;
import org.bayhold.catalog.Category;
import org.bayhold.catalog.PartSpec;
import org.bayhold.page.Form;
import org.bayhold.page.SiteTime;
import org.bayhold.refusal.Refusal;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** The right record in the place of a wrong one: the wrong one's fields to be put right, and what comes of it. */
@Component
class Replacements {
    private static final String OF_PAGE = "replacement.";

    /** What can be put right on a page, by kind; any other kind is struck out, and recorded anew on its own page. */
    private static final Map<String, List<String>> FIELDS = Map.of(
            "PART_CHANGED",
                    List.of(
                            "action",
                            "category",
                            "partSpecId",
                            "position",
                            "serial",
                            "ecuHardware",
                            "effectiveAt",
                            "odometerKm",
                            "performedBy",
                            "note"),
            "FLASHED", List.of("calibrationId", "outcome", "effectiveAt", "odometerKm", "performedBy", "note"),
            "READ_BACK", List.of("calid", "cvn", "fileSha256", "effectiveAt", "performedBy", "note"),
            "ARRIVED", List.of("effectiveAt", "odometerKm", "note"));

    /** Fields of the record that are told again as they were. */
    private static final List<String> KEPT = List.of("source", "adaptationsReset");

    private final Catalog catalog;
    private final Calibrations calibrations;
    private final SiteTime time;
    private final JsonMapper json;

    Replacements(Catalog catalog, Calibrations calibrations, SiteTime time, JsonMapper json) {
        this.catalog = catalog;
        this.calibrations = calibrations;
        this.time = time;
        this.json = json;
    }

    /**
     * A field of the page.
     *
     * @param label key of its label
     * @param kind of the constants to choose from; null for a text or a map
     * @param values the constants
     * @param options what else to choose from, by value
     * @param type of the input
     */
    record Field(
            String name,
            String label,
            @Nullable String kind,
            List<?> values,
            @Nullable Map<String, String> options,
            String type) {}

    /** The fields of a record as they stand; none where its kind is not put right here. */
    List<Field> fields(HistoryView record, String ecuHardware, Form form) {
        List<Field> fields = new ArrayList<>();
        for (String name : FIELDS.getOrDefault(record.kind(), List.of())) {
            form.with(OF_PAGE + name, shown(name, record));
            fields.add(field(name, ecuHardware));
        }
        return fields;
    }

    private Field field(String name, String ecuHardware) {
        String field = OF_PAGE + name;
        return switch (name) {
            case "action" -> constants(field, "install.action", "install.action", Fact.Action.values());
            case "outcome" -> constants(field, "flash.outcome", "flash.outcome", Fact.Outcome.values());
            case "category" -> constants(field, "install.place", "category", Category.values());
            case "calibrationId" -> new Field(field, "flash.which", null, List.of(), revisions(ecuHardware), "pick");
            case "effectiveAt" -> new Field(field, "form.when", null, List.of(), null, "datetime-local");
            default -> new Field(field, label(name), null, List.of(), null, "text");
        };
    }

    private static Field constants(String field, String label, String kind, Object[] values) {
        return new Field(field, label, kind, List.of(values), null, "choice");
    }

    private Map<String, String> revisions(String ecuHardware) {
        Map<String, String> options = new LinkedHashMap<>();
        calibrations
                .issuedFor(ecuHardware)
                .forEach(revision ->
                        options.put(revision.id().toString(), revision.name() + ", " + revision.revision()));
        return options;
    }

    private static String label(String name) {
        return switch (name) {
            case "partSpecId" -> "install.part";
            case "position" -> "install.position";
            case "serial" -> "install.serial";
            case "ecuHardware" -> "install.ecu-hardware";
            case "odometerKm" -> "form.odometer";
            case "performedBy" -> "form.performed-by";
            case "calid" -> "ecu-check.calid";
            case "cvn" -> "ecu-check.cvn";
            case "fileSha256" -> "ecu-check.sha256";
            default -> "form.note";
        };
    }

    private @Nullable String shown(String name, HistoryView record) {
        JsonNode value = record.record().get(name);
        if (name.equals("effectiveAt")) {
            return time.input(record.effectiveAt());
        }
        if (value == null || value.isNull()) {
            return null;
        }
        return name.equals("partSpecId")
                ? catalog.spec(UUID.fromString(value.asString()))
                        .map(Replacements::typed)
                        .orElse(null)
                : value.asString();
    }

    /** As the catalogue finds it again. */
    private static String typed(PartSpec spec) {
        return spec.maker() + " " + spec.partNumber() + " " + spec.specRevision();
    }

    /** What was typed, as the API takes it; the fields that cannot be read are noted in the form. */
    ObjectNode read(HistoryView record, Form form) {
        ObjectNode body = json.createObjectNode();
        for (String name : KEPT) {
            JsonNode kept = record.record().get(name);
            if (kept != null && !kept.isNull()) {
                body.set(name, kept);
            }
        }
        JsonNode codes = record.record().get("troubleCodes");
        if (codes != null && !codes.isNull()) {
            ArrayNode kept = body.putArray("troubleCodes");
            codes.forEach(code -> kept.add(code.get("code").asString()));
        }
        for (String name : FIELDS.getOrDefault(record.kind(), List.of())) {
            switch (name) {
                case "effectiveAt" -> body.put(name, effectiveAt(record, form));
                case "odometerKm" -> body.put(name, form.integer(OF_PAGE + name));
                case "partSpecId" -> body.put(name, part(form));
                default -> body.put(name, form.text(OF_PAGE + name));
            }
        }
        return body;
    }

    /** A minute that was left as it stood means the very moment of the record. */
    private @Nullable String effectiveAt(HistoryView record, Form form) {
        String field = OF_PAGE + "effectiveAt";
        if (form.value(field).equals(time.input(record.effectiveAt()))) {
            return record.effectiveAt().toString();
        }
        Instant typed = form.time(field);
        return typed == null ? null : typed.toString();
    }

    private @Nullable String part(Form form) {
        String field = OF_PAGE + "partSpecId";
        String typed = form.text(field);
        if (typed == null || !Fact.Action.FIT.name().equals(form.value(OF_PAGE + "action"))) {
            return null;
        }
        List<PartSpec> named = catalog.named(null, typed);
        if (named.size() != 1) {
            form.refused(Refusal.invalid(field, named.isEmpty() ? "strike-out.no-part" : "install.which-part"));
            return null;
        }
        return named.get(0).id().toString();
    }

    /** The API's names as the page has them. */
    static String ofPage(String field) {
        return List.of("reason", "password", "id").contains(field) || field.startsWith(OF_PAGE)
                ? field
                : OF_PAGE + field;
    }
}
