package org.bayhold.support;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpHeaders;
import java.util.List;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/**
 * What the server answered.
 *
 * @param request method and path of the call, for messages
 */
public record Answer(String request, int status, HttpHeaders headers, String text) {
    private static final JsonMapper JSON = JsonMapper.builder().build();

    public JsonNode json() {
        return JSON.readTree(text);
    }

    /** A field of the answer as text; empty where it is missing or null. */
    public String field(String name) {
        return textOf(json().path(name));
    }

    public String id() {
        assertThat(field("id")).as("id in %s", this).isNotEmpty();
        return field("id");
    }

    public String header(String name) {
        return headers.firstValue(name).orElse("");
    }

    public String etag() {
        assertThat(header("ETag")).as("ETag of %s", this).isNotEmpty();
        return header("ETag");
    }

    /** Fails unless the status is {@code expected}. */
    public Answer is(int expected) {
        assertThat(status).as(toString()).isEqualTo(expected);
        return this;
    }

    /** Fails unless this is an RFC 9457 problem of the given code. */
    public Answer isProblem(int expected, String code) {
        is(expected);
        assertThat(header("Content-Type")).as(toString()).startsWith("application/problem+json");
        assertThat(field("type")).as(toString()).isEqualTo("urn:bayhold:problem:" + code);
        assertThat(field("detail")).as("plain words in %s", this).isNotBlank();
        assertThat(text)
                .as("nothing of the server's inside in %s", this)
                .doesNotContainPattern("[a-z]Exception|org\\.bayhold|springframework|\\.java:\\d|(?i)select .+ from ");
        return this;
    }

    /** Fails unless this is a 400 {@code invalid} that names {@code field} and says something about it. */
    public Answer isInvalid(String field) {
        isProblem(400, "invalid");
        List<JsonNode> errors = elements(json().path("errors"));
        assertThat(errors.stream().map(error -> textOf(error.path("field"))))
                .as(toString())
                .contains(field);
        assertThat(errors)
                .as(toString())
                .allSatisfy(error -> assertThat(textOf(error.path("message"))).isNotBlank());
        return this;
    }

    /** Fails unless this is a 409 {@code evidence-missing} whose checks are among others the given ones. */
    public Answer lacksEvidenceFor(String... checks) {
        isProblem(409, "evidence-missing");
        assertThat(elements(json().path("checks")).stream()
                        .map(check -> check.isString() ? check.asString() : textOf(check.path("code"))))
                .as(toString())
                .contains(checks);
        return this;
    }

    /** Fails unless this is a 409 {@code gate-hold}; its decision. */
    public Gate isHeld() {
        isProblem(409, "gate-hold");
        Gate gate = new Gate(json().path("gate")).isWhole();
        gate.holdsFor();
        return gate;
    }

    public static List<JsonNode> elements(JsonNode array) {
        return array.isArray() ? List.copyOf(array.values()) : List.of();
    }

    public static String textOf(JsonNode node) {
        return node.isMissingNode() || node.isNull() ? "" : node.isValueNode() ? node.asString() : node.toString();
    }

    @Override
    public String toString() {
        return request + " -> " + status + " " + text;
    }
}
