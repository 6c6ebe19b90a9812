package org.bayhold.web;

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
        if (!isStorable(text)) {
            throw context.weirdStringException(text, String.class, "text cannot be stored");
        }
        return text;
    }

    static boolean isStorable(String text) {
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c == 0 || Character.isLowSurrogate(c)) {
                return false;
            }
            if (Character.isHighSurrogate(c)) {
                i++;
                if (i == text.length() || !Character.isLowSurrogate(text.charAt(i))) {
                    return false;
                }
            }
        }
        return true;
    }
}
