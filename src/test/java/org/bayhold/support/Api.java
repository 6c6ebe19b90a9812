package org.bayhold.support;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublisher;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Base64;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import tools.jackson.databind.JsonNode;

/**
 * HTTP calls to one running Bayhold in one person's name. Each POST carries a new idempotency key unless it is given one,
 * and each answer is held against the description of the API.
 */
public final class Api {
    private static final HttpClient HTTP = HttpClient.newBuilder()
            .version(HttpClient.Version.HTTP_1_1)
            .connectTimeout(Duration.ofSeconds(10))
            .build();
    private static final String V1 = "/api/v1";

    private final URI server;
    private final Map<String, String> headers;

    private Api(URI server, Map<String, String> headers) {
        this.server = server;
        this.headers = Map.copyOf(headers);
    }

    /** Calls of somebody who did not sign in. */
    public static Api anonymous(URI server) {
        return new Api(server, Map.of());
    }

    public Api withBasic(String user, String password) {
        byte[] both = (user + ":" + password).getBytes(StandardCharsets.UTF_8);
        return withHeader("Authorization", "Basic " + Base64.getEncoder().encodeToString(both));
    }

    public Api withToken(String token) {
        return withHeader("Authorization", "Bearer " + token);
    }

    public Api withHeader(String name, String value) {
        Map<String, String> more = new LinkedHashMap<>(headers);
        more.put(name, value);
        return new Api(server, more);
    }

    public Api withKey(String idempotencyKey) {
        return withHeader("Idempotency-Key", idempotencyKey);
    }

    public Api withIfMatch(String etag) {
        return withHeader("If-Match", etag);
    }

    public Answer get(String path) {
        return call("GET", path, BodyPublishers.noBody(), Map.of());
    }

    /** The bytes of an answer that is not text. */
    public byte[] download(String path) {
        return exchange("GET", path, BodyPublishers.noBody(), Map.of(), BodyHandlers.ofByteArray())
                .body();
    }

    /** An answer that is read as it comes. */
    public InputStream stream(String path) {
        return exchange("GET", path, BodyPublishers.noBody(), Map.of(), BodyHandlers.ofInputStream())
                .body();
    }

    /** A page of the server's that is no part of the API. */
    public Answer getOutside(String path) {
        return get(server.resolve(path).toString());
    }

    /** A call of any method, with a body whatever the method. */
    public Answer send(String method, String path, Object body) {
        return call(method, path, BodyPublishers.ofString(body.toString()), Map.of());
    }

    public Answer post(String path, Object body) {
        return call("POST", path, BodyPublishers.ofString(body.toString()), Map.of("Idempotency-Key", newKey()));
    }

    /** The bytes as they are, for what no well-behaved client would send. */
    public Answer postBytes(String path, byte[] body) {
        return call("POST", path, BodyPublishers.ofByteArray(body), Map.of("Idempotency-Key", newKey()));
    }

    /** A file with the fields of its form: {@code multipart/form-data}, RFC 7578. */
    public Answer postFile(String path, byte[] file, Map<String, String> fields) {
        String boundary = "bayhold-" + newKey();
        ByteArrayOutputStream body = new ByteArrayOutputStream();
        fields.forEach((name, value) -> body.writeBytes(
                ("--" + boundary + "\r\nContent-Disposition: form-data; name=\"" + name + "\"\r\n\r\n" + value + "\r\n")
                        .getBytes(StandardCharsets.UTF_8)));
        body.writeBytes(
                ("--" + boundary + "\r\nContent-Disposition: form-data; name=\"file\"; filename=\"drive.csv\"\r\n"
                                + "Content-Type: text/csv\r\n\r\n")
                        .getBytes(StandardCharsets.UTF_8));
        body.writeBytes(file);
        body.writeBytes(("\r\n--" + boundary + "--\r\n").getBytes(StandardCharsets.UTF_8));
        return call(
                "POST",
                path,
                BodyPublishers.ofByteArray(body.toByteArray()),
                Map.of("Idempotency-Key", newKey(), "Content-Type", "multipart/form-data; boundary=" + boundary));
    }

    public Answer put(String path, Object body) {
        return call("PUT", path, BodyPublishers.ofString(body.toString()), Map.of());
    }

    public Answer patch(String path, Object body) {
        return call("PATCH", path, BodyPublishers.ofString(body.toString()), Map.of());
    }

    public Answer delete(String path) {
        return call("DELETE", path, BodyPublishers.noBody(), Map.of());
    }

    /** Every item of a list, page by page. */
    public List<JsonNode> list(String path) {
        List<JsonNode> items = new ArrayList<>();
        pages(path).forEach(page -> items.addAll(Answer.elements(page.json().path("items"))));
        return items;
    }

    /** Every page of a list, from the first to the one that names no next. */
    public List<Answer> pages(String path) {
        Answer first = get(path).is(200);
        List<Answer> pages = new ArrayList<>(List.of(first));
        pages.addAll(pagesAfter(first.field("next"), path));
        return pages;
    }

    /** The pages from {@code next} on; none where it is empty. */
    public List<Answer> pagesAfter(String next, String path) {
        List<Answer> pages = new ArrayList<>();
        String from = path + (path.contains("?") ? "&" : "?") + "after=";
        String place = next;
        while (!place.isEmpty()) {
            assertThat(pages).as("pages of %s", path).hasSizeLessThan(1_000);
            Answer page = get(from + Shop.encoded(place)).is(200);
            pages.add(page);
            place = page.field("next");
        }
        return pages;
    }

    public static String newKey() {
        return UUID.randomUUID().toString();
    }

    private Answer call(String method, String path, BodyPublisher body, Map<String, String> unlessSet) {
        HttpResponse<String> response =
                exchange(method, path, body, unlessSet, BodyHandlers.ofString(StandardCharsets.UTF_8));
        return Described.check(
                method,
                response.uri(),
                new Answer(method + " " + path, response.statusCode(), response.headers(), response.body()));
    }

    private <T> HttpResponse<T> exchange(
            String method,
            String path,
            BodyPublisher body,
            Map<String, String> unlessSet,
            HttpResponse.BodyHandler<T> handler) {
        URI uri = server.resolve(path.startsWith(V1) || path.startsWith("http") ? path : V1 + path);
        Map<String, String> all = new LinkedHashMap<>(Map.of("Content-Type", "application/json"));
        all.putAll(unlessSet);
        all.putAll(headers);
        HttpRequest.Builder request =
                HttpRequest.newBuilder(uri).timeout(Duration.ofSeconds(60)).method(method, body);
        all.forEach(request::setHeader);
        try {
            return HTTP.send(request.build(), handler);
        } catch (IOException e) {
            throw new UncheckedIOException(method + " " + path, e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }
}
