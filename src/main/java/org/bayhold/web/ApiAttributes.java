package org.bayhold.web;

import io.swagger.v3.oas.models.OpenAPI;
import io.swagger.v3.oas.models.media.JsonSchema;
import io.swagger.v3.oas.models.media.Schema;
import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import org.bayhold.catalog.Attribute;
import org.bayhold.catalog.Category;
import org.bayhold.catalog.ChoiceAttribute;
import org.bayhold.catalog.Curve;
import org.bayhold.catalog.FlagAttribute;
import org.bayhold.catalog.NumberAttribute;
import org.bayhold.catalog.PartAttributes;
import org.bayhold.catalog.TextAttribute;
import org.springdoc.core.customizers.OpenApiCustomizer;
import org.springframework.context.MessageSource;

/** What may be recorded of a part, from the definition that refuses the rest: its name, kind, range, meaning, categories. */
final class ApiAttributes implements OpenApiCustomizer {
    private static final List<String> TAKEN_BY = List.of("PartSpecRequest", "CorrectionRequest");

    private final MessageSource messages;

    ApiAttributes(MessageSource messages) {
        this.messages = messages;
    }

    @Override
    public void customise(OpenAPI api) {
        Map<Attribute, TreeMap<String, Category>> categories = new LinkedHashMap<>();
        for (Category category : Category.values()) {
            PartAttributes.of(category)
                    .attributes()
                    .forEach(attribute -> categories
                            .computeIfAbsent(attribute, key -> new TreeMap<>())
                            .put(category.name(), category));
        }
        Map<String, Schema<?>> described = new TreeMap<>();
        categories.forEach((attribute, of) -> {
            String taken = of.size() == Category.values().length ? "" : " " + String.join(", ", of.keySet()) + ".";
            Schema<?> schema = schema(attribute).description(meaning(attribute) + "." + taken);
            if (described.put(attribute.name(), schema) != null) {
                throw new IllegalStateException(attribute.name() + " is defined twice");
            }
        });
        for (String name : TAKEN_BY) {
            Schema<?> request =
                    Objects.requireNonNull(api.getComponents().getSchemas().get(name));
            Schema<?> attributes =
                    Objects.requireNonNull(request.getProperties().get("attributes"));
            described.forEach(attributes::addProperty);
            attributes.setAdditionalProperties(false);
        }
    }

    private String meaning(Attribute attribute) {
        return messages.getMessage("attribute." + attribute.name(), null, Locale.ENGLISH);
    }

    private static Schema<?> schema(Attribute attribute) {
        if (attribute instanceof NumberAttribute number) {
            return typed("number")
                    .minimum(BigDecimal.valueOf(number.least()))
                    .maximum(BigDecimal.valueOf(number.most()));
        }
        if (attribute instanceof FlagAttribute) {
            return typed("boolean");
        }
        if (attribute instanceof ChoiceAttribute choice) {
            JsonSchema words = new JsonSchema();
            words.typesItem("string");
            choice.choices().forEach(words::addEnumItemObject);
            return words;
        }
        if (attribute instanceof TextAttribute text) {
            return typed("string").minLength(1).maxLength(text.longest());
        }
        // a curve: rows of a signal and a flow
        Schema<?> row = typed("array").items(typed("number")).minItems(2).maxItems(2);
        return typed("array").items(row).minItems(Curve.FEWEST_POINTS).maxItems(Curve.MOST_POINTS);
    }

    private static Schema<?> typed(String type) {
        Schema<?> schema = new JsonSchema();
        schema.addType(type);
        return schema;
    }
}
