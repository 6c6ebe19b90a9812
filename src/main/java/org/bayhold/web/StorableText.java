package org.bayhold.web;

import org.bayhold.journal.Text;
import org.jspecify.annotations.Nullable;
import tools.jackson.core.JsonParser;
import tools.jackson.core.JsonToken;
import tools.jackson.databind.DeserializationContext;
import tools.jackson.databind.deser.std.StdScalarDeserializer;

/**
 * Text that both databases can store: no U+0000, which PostgreSQL refuses, and no lone surrogate, which is no character.
 */
final class StorableText extends StdScalarDeserializer<String> {
    StorableText() {
        super(String.class);
    }

    @Override
    public @Nullable String deserialize(JsonParser parser, DeserializationContext context) {
        if (parser.currentToken() != JsonToken.VALUE_STRING) {
            return (String) context.handleUnexpectedToken(getValueType(context), parser);
        }
        String text = parser.getString();
        if (!Text.isStorable(text)) {
            throw context.weirdStringException(text, String.class, "text cannot be stored");
        }
        return text;
    }
}
