package org.bayhold.journal;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.io.IOException;
import org.erdtman.jcs.JsonCanonicalizer;
import org.springframework.stereotype.Component;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/**
 * How records become bytes: RFC 8785 canonical JSON, absent values left out, so that a field added later does not
 * change what was hashed before.
 */
@Component
public class CanonicalJson {
    private final JsonMapper mapper = JsonMapper.builder()
            .changeDefaultPropertyInclusion(value -> value.withValueInclusion(JsonInclude.Include.NON_NULL))
            .build();

    public String write(Object record) {
        try {
            return new JsonCanonicalizer(mapper.writeValueAsString(record)).getEncodedString();
        } catch (IOException e) {
            throw new IllegalArgumentException("a record that cannot be written as canonical JSON", e);
        }
    }

    public JsonNode tree(Object record) {
        return mapper.valueToTree(record);
    }

    public JsonNode parse(String json) {
        return mapper.readTree(json);
    }

    public <T> T read(String json, Class<T> type) {
        return mapper.readValue(json, type);
    }

    public <T> T read(JsonNode json, Class<T> type) {
        return mapper.treeToValue(json, type);
    }
}
