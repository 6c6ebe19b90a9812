package org.bayhold.web;

import com.fasterxml.jackson.annotation.JsonUnwrapped;
import com.fasterxml.jackson.databind.JavaType;
import io.swagger.v3.core.converter.AnnotatedType;
import io.swagger.v3.core.converter.ModelConverter;
import io.swagger.v3.core.converter.ModelConverterContext;
import io.swagger.v3.core.util.Json31;
import io.swagger.v3.oas.models.media.JsonSchema;
import io.swagger.v3.oas.models.media.Schema;
import jakarta.validation.constraints.NotBlank;
import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.ConcurrentHashMap;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;

/**
 * How the records of requests and answers are described: a component that is not {@code @Nullable} is always there, one
 * that is may be left out or be null, and a record inside another carries its name in its own.
 */
final class ApiModels implements ModelConverter {
    private static final String OURS = "org.bayhold.";

    private final Map<String, Class<?>> named = new ConcurrentHashMap<>();

    @Override
    public @Nullable Schema<?> resolve(
            AnnotatedType type, ModelConverterContext context, Iterator<ModelConverter> others) {
        JavaType java = Json31.mapper().constructType(type.getType());
        Class<?> raw = java == null ? Object.class : java.getRawClass();
        if (JsonNode.class.isAssignableFrom(raw)) {
            return new JsonSchema().typesItem("object");
        }
        boolean ours = raw.getName().startsWith(OURS) && (raw.isRecord() || raw.isEnum());
        if (ours && raw.getTypeParameters().length == 0) {
            type.name(unique(name(raw), raw));
        }
        Schema<?> schema = others.hasNext() ? others.next().resolve(type, context, others) : null;
        if (ours && raw.isRecord() && schema != null) {
            describe(raw, model(schema, context));
        }
        return schema;
    }

    /** Several records have a Line or an Outcome of their own. */
    private static String name(Class<?> type) {
        Class<?> around = type.getEnclosingClass();
        boolean isPartOf = around != null && (around.isRecord() || around.isInterface());
        return isPartOf ? name(around) + type.getSimpleName() : type.getSimpleName();
    }

    private String unique(String name, Class<?> type) {
        Class<?> other = named.putIfAbsent(name, type);
        if (other != null && other != type) {
            throw new IllegalStateException(
                    other.getName() + " and " + type.getName() + " are both described as " + name);
        }
        return name;
    }

    private static Schema<?> model(Schema<?> schema, ModelConverterContext context) {
        String reference = schema.get$ref();
        Schema<?> defined = reference == null
                ? null
                : context.getDefinedModels().get(reference.substring(reference.lastIndexOf('/') + 1));
        return defined == null ? schema : defined;
    }

    private static void describe(Class<?> record, Schema<?> model) {
        if (model.getProperties() == null) {
            return;
        }
        List<String> required = new ArrayList<>();
        describe(record, model, required);
        model.setRequired(required.isEmpty() ? null : required);
    }

    private static void describe(Class<?> record, Schema<?> model, List<String> required) {
        for (RecordComponent component : record.getRecordComponents()) {
            Schema<?> property = model.getProperties().get(component.getName());
            if (property == null && component.getAccessor().isAnnotationPresent(JsonUnwrapped.class)) {
                describe(component.getType(), model, required);
            } else if (property != null) {
                shortest(component, property);
                if (component.getAnnotatedType().isAnnotationPresent(Nullable.class)) {
                    model.getProperties().put(component.getName(), orNull(property));
                } else {
                    required.add(component.getName());
                }
            }
        }
    }

    private static void shortest(RecordComponent component, Schema<?> property) {
        if (component.getAccessor().isAnnotationPresent(NotBlank.class)) {
            property.setMinLength(1);
        } else if (Objects.equals(property.getMinLength(), 0)) {
            property.setMinLength(null);
        }
        if (Objects.equals(property.getMinItems(), 0)) {
            property.setMinItems(null);
        }
    }

    private static Schema<?> orNull(Schema<?> property) {
        if (property.get$ref() != null) {
            return new JsonSchema().anyOf(List.of(property, new JsonSchema().typesItem("null")));
        }
        if (property.getTypes() != null) {
            property.addType("null");
        }
        return property;
    }
}
