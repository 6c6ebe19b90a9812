package org.bayhold.drives;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.bayhold.buildsheet.DriveLogged.ColumnSaid;
import org.bayhold.drivelog.Parameter;
import org.bayhold.drivelog.Unit;
import org.bayhold.journal.Text;
import org.bayhold.refusal.Refusal;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/**
 * What is said of columns over HTTP: a JSON object of heading and parameter, {@code {"Rev": "ENGINE_SPEED"}}; of heading,
 * parameter and unit, {@code {"Boost": {"parameter": "MANIFOLD_PRESSURE", "unit": "psi"}}}; or of a heading that is not to be
 * read, {@code {"Speed 2": null}}.
 */
@Component
class SaidColumns {
    private static final String FIELD = "columns";
    private static final int MOST = 200;
    private static final int LONGEST = 200;

    private final JsonMapper json;

    SaidColumns(JsonMapper json) {
        this.json = json;
    }

    /** @throws Refusal INVALID where it is none, or names what does not exist */
    List<ColumnSaid> of(@Nullable String text) {
        if (text == null || text.isBlank()) {
            return List.of();
        }
        try {
            return of(json.readTree(text));
        } catch (JacksonException broken) {
            throw Refusal.invalid(FIELD, "drive-log.columns-form");
        }
    }

    List<ColumnSaid> of(JsonNode tree) {
        if (!tree.isObject() || tree.size() > MOST) {
            throw Refusal.invalid(FIELD, "drive-log.columns-form");
        }
        List<ColumnSaid> said = new ArrayList<>();
        for (Map.Entry<String, JsonNode> column : tree.properties()) {
            said.add(said(column.getKey(), column.getValue()));
        }
        return said;
    }

    private static ColumnSaid said(String name, JsonNode value) {
        if (value.isNull()) {
            return of(FIELD + "." + name, name, null, null);
        }
        String parameter = value.isString() ? value.asString() : text(value, "parameter");
        String unit = value.isString() ? null : text(value, "unit");
        return of(FIELD + "." + name, name, parameter == null ? "" : parameter, unit);
    }

    private static @Nullable String text(JsonNode value, String field) {
        JsonNode text = value.get(field);
        return text == null || !text.isString() ? null : text.asString();
    }

    /**
     * One column.
     *
     * @param field where a refusal belongs
     * @param parameterText null where it is not to be read
     */
    static ColumnSaid of(String field, String name, @Nullable String parameterText, @Nullable String unitText) {
        if (name.isBlank() || name.length() > LONGEST || !Text.isStorable(name)) {
            throw Refusal.invalid(field, "drive-log.column-name", LONGEST);
        }
        if (parameterText == null) {
            return new ColumnSaid(name.strip(), null, null);
        }
        Parameter parameter = Parameter.named(parameterText);
        if (parameter == null) {
            throw Refusal.invalid(field, "drive-log.no-parameter", parameterText);
        }
        if (unitText == null) {
            return new ColumnSaid(name.strip(), parameter, null);
        }
        Unit unit = Unit.of(parameter, unitText);
        if (unit == null) {
            throw Refusal.invalid(field, "drive-log.no-unit", unitText, parameter);
        }
        return new ColumnSaid(name.strip(), parameter, unit);
    }
}
