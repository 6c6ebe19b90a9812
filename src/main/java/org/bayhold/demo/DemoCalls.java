package org.bayhold.demo;

import java.net.URI;
import java.util.HashMap;
import java.util.Map;
import java.util.Objects;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.core.io.ByteArrayResource;
import org.springframework.http.HttpHeaders;
import org.springframework.http.HttpMethod;
import org.springframework.http.MediaType;
import org.springframework.util.LinkedMultiValueMap;
import org.springframework.util.MultiValueMap;
import org.springframework.web.client.HttpServerErrorException;
import org.springframework.web.client.RestClient;
import tools.jackson.databind.JsonNode;

/** Calls of this server's own API, in the name of the demo users; what it is told stands where a shop's people put it. */
final class DemoCalls implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(DemoCalls.class);
    private static final int TRIES = 10;
    private static final long PAUSE_MILLIS = 500;

    private final RestClient api;
    private final String password;
    private final Map<String, Token> tokens = new HashMap<>();

    private record Token(String id, String token) {}

    DemoCalls(URI server, String password) {
        this.api = RestClient.create(server.resolve("/api/v1"));
        this.password = password;
    }

    JsonNode get(String by, String path, Object... variables) {
        String token = token(by);
        return Objects.requireNonNull(api.get()
                .uri(path, variables)
                .headers(headers -> headers.setBearerAuth(token))
                .retrieve()
                .body(JsonNode.class));
    }

    /** The same key and body make the same record once, whichever of several servers asks first. */
    JsonNode post(String by, String path, String key, JsonNode body) {
        return send(HttpMethod.POST, by, path, key, body);
    }

    /** The same for what is there already, whatever its version. */
    JsonNode patch(String by, String path, String key, JsonNode body) {
        return send(HttpMethod.PATCH, by, path, key, body);
    }

    /** A file with the fields of its form. */
    JsonNode postFile(String by, String path, String key, byte[] file, Map<String, String> fields) {
        MultiValueMap<String, Object> form = new LinkedMultiValueMap<>();
        fields.forEach(form::add);
        form.add("file", new ByteArrayResource(file) {
            @Override
            public String getFilename() {
                return "drive.csv";
            }
        });
        return send(HttpMethod.POST, by, path, key, form, MediaType.MULTIPART_FORM_DATA);
    }

    private JsonNode send(HttpMethod method, String by, String path, String key, Object body) {
        return send(method, by, path, key, body, MediaType.APPLICATION_JSON);
    }

    /** The shop's policy; what is left out stays. */
    void put(String by, String path, JsonNode body) {
        send(HttpMethod.PUT, by, path, "", body);
    }

    private JsonNode send(HttpMethod method, String by, String path, String key, Object body, MediaType type) {
        String token = token(by);
        for (int attempt = 1; ; attempt++) {
            try {
                return Objects.requireNonNull(api.method(method)
                        .uri(path)
                        .headers(headers -> headers.setBearerAuth(token))
                        .header("Idempotency-Key", "demo-shop-" + key)
                        .headers(headers -> {
                            if (method.equals(HttpMethod.PATCH)) {
                                headers.setIfMatch("*");
                            }
                        })
                        .contentType(type)
                        .body(body)
                        .retrieve()
                        .body(JsonNode.class));
            } catch (HttpServerErrorException.ServiceUnavailable e) {
                if (attempt == TRIES) {
                    throw e;
                }
                LOG.debug("{} is not to be had yet, try {}", path, attempt, e);
                pause();
            }
        }
    }

    private String token(String by) {
        return tokens.computeIfAbsent(by, this::signIn).token();
    }

    private Token signIn(String user) {
        JsonNode answer = Objects.requireNonNull(api.post()
                .uri("/tokens")
                .headers(headers -> headers.setBasicAuth(user, password))
                .contentType(MediaType.APPLICATION_JSON)
                .body(Map.of("label", "fills the demo shop"))
                .retrieve()
                .body(JsonNode.class));
        return new Token(answer.path("id").asString(), answer.path("token").asString());
    }

    /** Takes the tokens back. */
    @Override
    public void close() {
        tokens.values().forEach(token -> {
            var ignored = api.delete()
                    .uri("/tokens/{id}", token.id())
                    .header(HttpHeaders.AUTHORIZATION, "Bearer " + token.token())
                    .retrieve()
                    .toBodilessEntity();
        });
    }

    private static void pause() {
        try {
            Thread.sleep(PAUSE_MILLIS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }
}
