package org.bayhold.catalog;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import org.bayhold.refusal.Refusal;

/** Words. They are compared, where at all, without regard to case, blanks, hyphens and underscores. */
public record TextAttribute(String name, int longest) implements Attribute {
    private static final Pattern BLANKS = Pattern.compile("[\\s_-]+");

    /** What is recorded, in the form in which two texts are compared. */
    public Optional<String> in(Map<String, Object> recorded) {
        return recorded.get(name) instanceof String text && takes(text)
                ? Optional.of(
                        BLANKS.matcher(text.strip().toUpperCase(Locale.ROOT)).replaceAll(" "))
                : Optional.empty();
    }

    @Override
    public Kind kind() {
        return Kind.TEXT;
    }

    @Override
    public Optional<Refusal.Reason> problem(String field, Object value) {
        return value instanceof String text && takes(text)
                ? Optional.empty()
                : Optional.of(new Refusal.Reason(field, "attributes.text", List.of(name, longest)));
    }

    @Override
    public String allowed() {
        return "1 … " + longest;
    }

    private boolean takes(String text) {
        return !text.isBlank() && text.length() <= longest;
    }
}
