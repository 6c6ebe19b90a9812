package org.bayhold.refusal;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.bayhold.refusal.Refusal.Reason;
import org.jspecify.annotations.Nullable;
import org.springframework.context.MessageSource;
import org.springframework.http.HttpStatus;
import org.springframework.http.MediaType;
import org.springframework.http.ProblemDetail;
import org.springframework.stereotype.Component;
import tools.jackson.databind.json.JsonMapper;

/** Refusals as RFC 9457 problem details, in plain words, with the request's id and nothing of the server's inside. */
@Component
public class Problems {
    /** The request attribute that holds the request's id. */
    public static final String REQUEST_ID = "org.bayhold.request-id";

    private static final int RETRY_AFTER_SECONDS = 5;

    private final MessageSource messages;
    private final JsonMapper json;

    Problems(MessageSource messages, JsonMapper json) {
        this.messages = messages;
        this.json = json;
    }

    /** One field's error: the field as a JSON path, and what to do about it. */
    public record FieldError(@Nullable String field, String message) {}

    public ProblemDetail of(Refusal refusal, HttpServletRequest request) {
        List<FieldError> errors = refusal.reasons().stream()
                .map(reason -> new FieldError(reason.field(), sentence(reason)))
                .toList();
        return of(refusal.code(), errors, request);
    }

    public ProblemDetail of(Code code, List<FieldError> errors, HttpServletRequest request) {
        ProblemDetail problem = ProblemDetail.forStatus(code.status());
        problem.setType(URI.create("urn:bayhold:problem:" + code.slug()));
        problem.setTitle(HttpStatus.valueOf(code.status()).getReasonPhrase());
        problem.setDetail(
                errors.isEmpty()
                        ? sentence("problem." + code.slug(), List.of())
                        : String.join(
                                " ",
                                errors.stream()
                                        .map(FieldError::message)
                                        .distinct()
                                        .toList()));
        problem.setProperty("requestId", request.getAttribute(REQUEST_ID));
        List<FieldError> named =
                errors.stream().filter(error -> error.field() != null).toList();
        if (!named.isEmpty()) {
            problem.setProperty("errors", named);
        }
        return problem;
    }

    /** Writes a problem where no controller was reached: a filter, an entry point. */
    public void write(Code code, HttpServletRequest request, HttpServletResponse response) throws IOException {
        write(code, request, response, RETRY_AFTER_SECONDS);
    }

    /** @param retryAfterSeconds told where it helps to come again */
    public void write(Code code, HttpServletRequest request, HttpServletResponse response, long retryAfterSeconds)
            throws IOException {
        write(of(code, List.of(), request), code, request, response, retryAfterSeconds);
    }

    /** Writes a refusal that says more than its code, where no controller was reached. */
    public void write(Refusal refusal, HttpServletRequest request, HttpServletResponse response) throws IOException {
        write(of(refusal, request), refusal.code(), request, response, RETRY_AFTER_SECONDS);
    }

    private void write(
            ProblemDetail problem,
            Code code,
            HttpServletRequest request,
            HttpServletResponse response,
            long retryAfterSeconds)
            throws IOException {
        response.setStatus(code.status());
        retryAfter(code, response, retryAfterSeconds);
        response.setContentType(MediaType.APPLICATION_PROBLEM_JSON_VALUE);
        response.setCharacterEncoding(StandardCharsets.UTF_8);
        Map<String, Object> body = new LinkedHashMap<>();
        body.put("type", problem.getType());
        body.put("title", problem.getTitle());
        body.put("status", problem.getStatus());
        body.put("detail", problem.getDetail());
        body.put("requestId", request.getAttribute(REQUEST_ID));
        response.getWriter().write(json.writeValueAsString(body));
    }

    /** Tells a refused caller when to come again, where that helps. */
    public static void retryAfter(Code code, HttpServletResponse response) {
        retryAfter(code, response, RETRY_AFTER_SECONDS);
    }

    private static void retryAfter(Code code, HttpServletResponse response, long seconds) {
        if (code == Code.UNAVAILABLE || code == Code.TOO_MANY_REQUESTS) {
            response.setHeader("Retry-After", Long.toString(seconds));
        }
    }

    public String sentence(Reason reason) {
        return sentence(reason.key(), reason.arguments());
    }

    private String sentence(String key, List<Object> arguments) {
        return messages.getMessage(key, arguments.stream().map(String::valueOf).toArray(), Locale.ENGLISH);
    }
}
