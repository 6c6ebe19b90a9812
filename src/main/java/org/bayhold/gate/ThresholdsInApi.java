package org.bayhold.gate;

import io.swagger.v3.oas.models.OpenAPI;
import io.swagger.v3.oas.models.media.JsonSchema;
import io.swagger.v3.oas.models.media.Schema;
import java.math.BigDecimal;
import java.util.Locale;
import java.util.Objects;
import org.bayhold.catalog.Attribute;
import org.bayhold.catalog.NumberAttribute;
import org.springdoc.core.customizers.OpenApiCustomizer;
import org.springframework.context.MessageSource;
import org.springframework.stereotype.Component;

/** What a threshold may be, in the description of the API, from the definition that refuses the rest. */
@Component
class ThresholdsInApi implements OpenApiCustomizer {
    private final MessageSource messages;

    ThresholdsInApi(MessageSource messages) {
        this.messages = messages;
    }

    @Override
    public void customise(OpenAPI api) {
        Schema<?> request =
                Objects.requireNonNull(api.getComponents().getSchemas().get("PolicyRequest"));
        Schema<?> thresholds = Objects.requireNonNull(request.getProperties().get(PolicyRequest.THRESHOLDS));
        ThresholdGroup.ALL
                .attributes()
                .forEach(threshold -> thresholds.addProperty(threshold.name(), schema(threshold)));
        thresholds.setAdditionalProperties(false);
    }

    /** Null leaves a threshold as it is. */
    private Schema<?> schema(Attribute threshold) {
        JsonSchema schema = new JsonSchema();
        schema.addType("null");
        schema.description(messages.getMessage("threshold.means." + threshold.name(), null, Locale.ENGLISH));
        if (threshold instanceof NumberAttribute number) {
            schema.addType("number");
            schema.minimum(BigDecimal.valueOf(number.least()));
            schema.maximum(BigDecimal.valueOf(number.most()));
        } else {
            schema.addType("boolean");
        }
        return schema;
    }
}
