package org.bayhold.web;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.OffsetDateTime;
import tools.jackson.core.JsonParser;
import tools.jackson.core.JsonToken;
import tools.jackson.databind.DeserializationContext;
import tools.jackson.databind.deser.std.StdScalarDeserializer;

/**
 * A time as ISO 8601 text with its offset, of the years 1 to 9999, which both databases can store. A bare number could be
 * seconds or milliseconds: it is refused rather than guessed at.
 */
final class WrittenTime extends StdScalarDeserializer<Instant> {
    private static final int LAST_YEAR = 9999;

    WrittenTime() {
        super(Instant.class);
    }

    @Override
    public Instant deserialize(JsonParser parser, DeserializationContext context) {
        String text = parser.currentToken() == JsonToken.VALUE_STRING ? parser.getString() : "";
        try {
            OffsetDateTime time = OffsetDateTime.parse(text.strip());
            if (time.getYear() >= 1 && time.getYear() <= LAST_YEAR) {
                return time.toInstant();
            }
        } catch (DateTimeException e) {
            // told below, in our own words
        }
        throw context.weirdStringException(text, Instant.class, "no time with its offset");
    }
}
