package org.bayhold.catalog;

import java.util.List;
import java.util.Optional;
import org.bayhold.refusal.Refusal;

/** True or false. */
public record FlagAttribute(String name) implements Attribute {
    @Override
    public Kind kind() {
        return Kind.FLAG;
    }

    @Override
    public Optional<Refusal.Reason> problem(String field, Object value) {
        return value instanceof Boolean
                ? Optional.empty()
                : Optional.of(new Refusal.Reason(field, "attributes.flag", List.of(name)));
    }

    @Override
    public String allowed() {
        return "true, false";
    }
}
