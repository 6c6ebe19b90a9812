package org.bayhold.web;

import io.swagger.v3.oas.models.OpenAPI;
import io.swagger.v3.oas.models.Operation;
import io.swagger.v3.oas.models.PathItem;
import io.swagger.v3.oas.models.headers.Header;
import io.swagger.v3.oas.models.media.Content;
import io.swagger.v3.oas.models.media.JsonSchema;
import io.swagger.v3.oas.models.media.MediaType;
import io.swagger.v3.oas.models.media.Schema;
import io.swagger.v3.oas.models.media.StringSchema;
import io.swagger.v3.oas.models.responses.ApiResponse;
import io.swagger.v3.oas.models.security.SecurityRequirement;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.bayhold.refusal.Code;
import org.springdoc.core.customizers.OpenApiCustomizer;
import org.springframework.context.MessageSource;

/** Refusals, described once and referred to by every route that can answer them; and what routes share besides. */
final class ApiProblems implements OpenApiCustomizer {
    private static final String PROBLEM = "Problem";
    private static final String SCHEMAS = "#/components/schemas/";
    private static final String RESPONSES = "#/components/responses/";

    private final MessageSource messages;

    ApiProblems(MessageSource messages) {
        this.messages = messages;
    }

    @Override
    public void customise(OpenAPI api) {
        api.addSecurityItem(new SecurityRequirement().addList(ApiDescription.BEARER));
        schemas(api);
        Set<Code> answered = EnumSet.of(Code.GATE_HOLD, Code.EVIDENCE_MISSING);
        api.getPaths().forEach((path, item) -> {
            item.readOperationsMap().forEach((method, operation) -> {
                Set<Code> codes = refusals(path, method, operation);
                codes.forEach(code -> refuses(operation, code));
                answered.addAll(codes);
                etag(api, operation);
            });
        });
        answered.forEach(code -> api.getComponents().addResponses(name(code), response(code)));
    }

    private static void refuses(Operation operation, Code code) {
        operation
                .getResponses()
                .putIfAbsent(Integer.toString(code.status()), new ApiResponse().$ref(RESPONSES + name(code)));
    }

    /** What a route can refuse follows from its method, its address and whether it takes a body. */
    private static Set<Code> refusals(String path, PathItem.HttpMethod method, Operation operation) {
        Set<Code> codes = EnumSet.of(Code.UNAUTHENTICATED, Code.FORBIDDEN, Code.INTERNAL, Code.UNAVAILABLE);
        boolean hasBody = operation.getRequestBody() != null;
        boolean hasParameters =
                operation.getParameters() != null && !operation.getParameters().isEmpty();
        if (hasBody || hasParameters) {
            codes.add(Code.INVALID);
        }
        if (hasBody) {
            codes.addAll(EnumSet.of(Code.TOO_LARGE, Code.UNSUPPORTED));
        }
        if (path.contains("{")) {
            codes.add(Code.NOT_FOUND);
        }
        if (method == PathItem.HttpMethod.POST && operation.getSecurity() == null) {
            codes.addAll(EnumSet.of(Code.CONFLICT, Code.IDEMPOTENCY_MISMATCH));
        }
        if (method == PathItem.HttpMethod.POST && operation.getSecurity() != null) {
            codes.add(Code.TOO_MANY_REQUESTS);
        }
        if (method == PathItem.HttpMethod.PATCH) {
            codes.addAll(EnumSet.of(Code.STALE, Code.PRECONDITION_REQUIRED));
        }
        return codes;
    }

    /** What has a version has it as its ETag too. */
    private static void etag(OpenAPI api, Operation operation) {
        Stream.of("200", "201")
                .flatMap(status -> Stream.ofNullable(operation.getResponses().get(status)))
                .filter(response -> hasVersion(api, response))
                .forEach(response -> response.addHeaderObject("ETag", new Header().schema(new StringSchema())));
    }

    private static boolean hasVersion(OpenAPI api, ApiResponse response) {
        return response.getContent() != null
                && response.getContent().values().stream()
                        .flatMap(content -> Stream.ofNullable(content.getSchema()))
                        .flatMap(schema -> Stream.ofNullable(schema.get$ref()))
                        .map(reference -> api.getComponents().getSchemas().get(reference.substring(SCHEMAS.length())))
                        .anyMatch(schema -> schema != null
                                && schema.getProperties() != null
                                && schema.getProperties().containsKey("version"));
    }

    private ApiResponse response(Code code) {
        Schema<?> schema = switch (code) {
            case GATE_HOLD -> reference("GateHold");
            // the same route answers a plain conflict where the item is closed already
            case EVIDENCE_MISSING -> new JsonSchema().anyOf(List.of(reference("EvidenceMissing"), reference(PROBLEM)));
            default -> reference(PROBLEM);
        };
        ApiResponse response = new ApiResponse()
                .description(messages.getMessage("problem." + code.slug(), null, Locale.ENGLISH))
                .content(new Content()
                        .addMediaType(
                                org.springframework.http.MediaType.APPLICATION_PROBLEM_JSON_VALUE,
                                new MediaType().schema(schema)));
        return code == Code.UNAVAILABLE || code == Code.TOO_MANY_REQUESTS
                ? response.addHeaderObject("Retry-After", new Header().schema(new JsonSchema().typesItem("integer")))
                : response;
    }

    private static void schemas(OpenAPI api) {
        Schema<?> error = object(Map.of("field", text(), "message", text())).required(List.of("field", "message"));
        Schema<?> problem = object(Map.of(
                        "type", text().format("uri"),
                        "title", text(),
                        "status", new JsonSchema().typesItem("integer").format("int32"),
                        "detail", text(),
                        "instance", text().format("uri-reference"),
                        "requestId", text().format("uuid"),
                        "errors", list(error)))
                .required(List.of("type", "title", "status", "detail", "requestId"));
        api.getComponents()
                .addSchemas(PROBLEM, problem)
                .addSchemas("GateHold", further("gate", reference("DecisionView")))
                .addSchemas("EvidenceMissing", further("checks", list(reference("DecisionViewCheckView"))));
    }

    private static Schema<?> further(String field, Schema<?> schema) {
        return new JsonSchema()
                .allOf(List.of(reference(PROBLEM), object(Map.of(field, schema)).required(List.of(field))));
    }

    private static Schema<?> object(Map<String, Schema<?>> properties) {
        Schema<?> object = new JsonSchema().typesItem("object");
        properties.keySet().stream().sorted().forEach(name -> object.addProperty(name, properties.get(name)));
        return object;
    }

    private static Schema<?> list(Schema<?> items) {
        Schema<?> list = new JsonSchema().typesItem("array");
        return list.items(items);
    }

    private static Schema<?> text() {
        return new JsonSchema().typesItem("string");
    }

    private static Schema<?> reference(String name) {
        return new JsonSchema().$ref(SCHEMAS + name);
    }

    /** {@code GateHold} for {@code gate-hold}. */
    private static String name(Code code) {
        return Stream.of(code.slug().split("-", -1))
                .map(word -> word.substring(0, 1).toUpperCase(Locale.ROOT) + word.substring(1))
                .collect(Collectors.joining());
    }
}
