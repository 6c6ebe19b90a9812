package org.bayhold.catalog;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.bayhold.page.Form;
import org.bayhold.refusal.Refusal;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.json.JsonMapper;

/**
 * Attributes as typed: a name, an equals sign and a value on each line. A table is written as JSON, or pasted: a name, an
 * equals sign, and under it two numbers on each line.
 */
public final class AttributeText {
    /** What a spreadsheet puts between two numbers; a comma within a number is not read as a decimal point. */
    private static final Pattern BETWEEN = Pattern.compile("\\s*[;,\\t]\\s*|\\s+");

    private AttributeText() {}

    /** What cannot be read is noted in the form, at this field. */
    public static Map<String, Object> read(Form form, String field, JsonMapper json) {
        Map<String, Object> attributes = new LinkedHashMap<>();
        String lines = form.text(field);
        if (lines == null) {
            return attributes;
        }
        List<Object> pasted = null;
        for (String line : lines.lines().filter(any -> !any.isBlank()).toList()) {
            int equals = line.indexOf('=');
            String name = equals < 0 ? "" : line.substring(0, equals).strip();
            List<Object> row = equals < 0 && pasted != null ? row(line.strip()) : List.of();
            if (pasted != null && !row.isEmpty()) {
                pasted.add(row);
            } else if (name.isEmpty()) {
                form.refused(Refusal.invalid(field, "parts.attributes.line", line.strip()));
            } else {
                String text = line.substring(equals + 1).strip();
                pasted = text.isEmpty() ? new ArrayList<>() : null;
                if (attributes.put(name, pasted == null ? value(text, json) : pasted) != null) {
                    form.refused(Refusal.invalid(field, "parts.attributes.twice", name));
                }
            }
        }
        return attributes;
    }

    /** The numbers of a pasted line; empty where it is none. */
    private static List<Object> row(String line) {
        List<Object> numbers = new ArrayList<>();
        for (String cell : BETWEEN.split(line, -1)) {
            if (number(cell) instanceof Double number) {
                numbers.add(number);
            } else {
                return List.of();
            }
        }
        return numbers;
    }

    public static String write(Map<String, Object> attributes) {
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
        return number(text);
    }

    /** The text itself where it is no number. */
    private static Object number(String text) {
        try {
            return new BigDecimal(text).doubleValue();
        } catch (NumberFormatException e) {
            return text;
        }
    }
}
