package org.bayhold.support;

import java.util.List;
import tools.jackson.databind.JsonNode;

/** A retune item, as the API tells it. */
public record RetuneItem(JsonNode json) {
    public String id() {
        return Answer.textOf(json.path("id"));
    }

    public String status() {
        return Answer.textOf(json.path("status"));
    }

    public String basis() {
        return Answer.textOf(json.path("basis"));
    }

    public String clearedAt() {
        return Answer.textOf(json.path("clearedAt"));
    }

    public boolean isOpen() {
        return status().equals("OPEN");
    }

    /** The code of every cause, in order. */
    public List<String> causes() {
        return Answer.elements(json.path("causes")).stream()
                .map(cause -> Answer.textOf(cause.path("code")))
                .toList();
    }
}
