package org.bayhold.catalog;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.bayhold.refusal.Refusal;

/** One of a few words, which the computation tells apart. */
public record ChoiceAttribute(String name, List<String> choices) implements Attribute {
    public ChoiceAttribute {
        choices = List.copyOf(choices);
    }

    public Optional<String> in(Map<String, Object> recorded) {
        return Optional.ofNullable(recorded.get(name)).map(Object::toString).filter(choices::contains);
    }

    @Override
    public Kind kind() {
        return Kind.CHOICE;
    }

    @Override
    public Optional<Refusal.Reason> problem(String field, Object value) {
        return value instanceof String text && choices.contains(text)
                ? Optional.empty()
                : Optional.of(new Refusal.Reason(field, "attributes.one-of", List.of(name, allowed())));
    }

    @Override
    public String allowed() {
        return String.join(", ", choices);
    }
}
