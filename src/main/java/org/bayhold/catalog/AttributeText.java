package org.bayhold.catalog;

import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.stream.Collectors;
import org.bayhold.page.Form;
import org.bayhold.refusal.Refusal;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.json.JsonMapper;

/** Attributes as typed: a name, an equals sign and a value on each line; a table is written as JSON. */
final class AttributeText {
    private AttributeText() {}

    static Map<String, Object> read(Form form, String field, JsonMapper json) {
        Map<String, Object> attributes = new LinkedHashMap<>();
        String lines = form.text(field);
        if (lines == null) {
            return attributes;
        }
        for (String line : lines.lines().toList()) {
            int equals = line.indexOf('=');
            String name = equals < 0 ? "" : line.substring(0, equals).strip();
            if (!line.isBlank() && name.isEmpty()) {
                form.refused(Refusal.invalid(field, "parts.attributes.line", line.strip()));
            } else if (!line.isBlank()
                    && attributes.put(name, value(line.substring(equals + 1).strip(), json)) != null) {
                form.refused(Refusal.invalid(field, "parts.attributes.twice", name));
            }
        }
        return attributes;
    }

    static String write(Map<String, Object> attributes) {
        return attributes.entrySet().stream()
                .map(entry -> entry.getKey() + " = " + entry.getValue())
                .collect(Collectors.joining("\n"));
    }

    private static Object value(String text, JsonMapper json) {
        if (text.startsWith("[")) {
            try {
                return json.readValue(text, Object.class);
            } catch (JacksonException e) {
                return text;
            }
        }
        if (text.equals("true") || text.equals("false")) {
            return Boolean.valueOf(text);
        }
        try {
            return new BigDecimal(text).doubleValue();
        } catch (NumberFormatException e) {
            return text;
        }
    }
}
