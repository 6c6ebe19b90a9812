package org.bayhold.support;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import tools.jackson.databind.JsonNode;

/** A decision of the gate, as the API tells it. */
public record Gate(JsonNode json) {
    /** The checks in the order of the table. */
    public static final List<String> CHECKS = List.of(
            "PARTS_KNOWN",
            "FLASH_COMPLETED",
            "FLASH_AFTER_LAST_CHANGE",
            "CALIBRATION_IN_FORCE",
            "PARTS_COVERED",
            "READ_BACK_MATCHES",
            "NO_RELATED_TROUBLE_CODES",
            "DRIVE_LOG_PASSED",
            "RETUNE_CLEARED",
            "CUSTOMER_ACKNOWLEDGED");

    public String decision() {
        return Answer.textOf(json.path("decision"));
    }

    public String risk() {
        return Answer.textOf(json.path("risk"));
    }

    public Map<String, String> outcomes() {
        Map<String, String> outcomes = new LinkedHashMap<>();
        checks().forEach(
                        check -> outcomes.put(Answer.textOf(check.path("code")), Answer.textOf(check.path("outcome"))));
        return outcomes;
    }

    public String outcome(String check) {
        assertThat(outcomes()).containsKey(check);
        return outcomes().get(check);
    }

    /** Why a check answered as it did, in words. */
    public String reasonOf(String check) {
        return checks().stream()
                .filter(one -> Answer.textOf(one.path("code")).equals(check))
                .map(one -> Answer.textOf(one.path("reason")))
                .findFirst()
                .orElseThrow();
    }

    public List<String> failing() {
        return outcomes().entrySet().stream()
                .filter(check -> check.getValue().equals("FAIL"))
                .map(Map.Entry::getKey)
                .toList();
    }

    public List<JsonNode> checks() {
        return Answer.elements(json.path("checks"));
    }

    public List<JsonNode> mismatches() {
        return Answer.elements(json.path("mismatches"));
    }

    public List<String> mismatchedPlaces() {
        return mismatches().stream()
                .map(mismatch -> Answer.textOf(mismatch.path("category")))
                .toList();
    }

    /** Fails unless this is a whole decision: every check with an outcome and a sentence, and HOLD where one fails. */
    public Gate isWhole() {
        assertThat(outcomes().keySet()).containsExactlyElementsOf(CHECKS);
        assertThat(outcomes().values()).isSubsetOf("PASS", "FAIL", "NOT_REQUIRED");
        assertThat(checks())
                .allSatisfy(
                        check -> assertThat(Answer.textOf(check.path("reason"))).isNotBlank());
        assertThat(decision()).as(toString()).isEqualTo(failing().isEmpty() ? "CLEAR" : "HOLD");
        return this;
    }

    public void isClear() {
        isWhole();
        assertThat(decision()).as(toString()).isEqualTo("CLEAR");
    }

    /** Fails unless the gate holds and the given checks are among those that fail. */
    public void holdsFor(String... checks) {
        isWhole();
        assertThat(decision()).as(toString()).isEqualTo("HOLD");
        assertThat(failing()).as(toString()).containsAll(List.of(checks));
    }

    @Override
    public String toString() {
        return decision()
                + outcomes().entrySet().stream()
                        .map(check -> check.getKey() + "=" + check.getValue())
                        .collect(Collectors.joining(", ", " [", "]"));
    }
}
