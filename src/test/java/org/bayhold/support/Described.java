package org.bayhold.support;

import static org.assertj.core.api.Assertions.assertThat;

import com.networknt.schema.Schema;
import com.networknt.schema.SchemaLocation;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.dialect.Dialects;
import java.net.URI;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

/**
 * Holds every answer that a test gets against {@code docs/openapi.json}: its status and headers, each field's kind, and no
 * field beside them.
 */
final class Described {
    private static final String DOCUMENT = "https://bayhold.example/openapi.json";
    /** Not of a route: the method, or the format asked for, is one that it does not have. */
    private static final Set<Integer> OF_NO_ROUTE = Set.of(405, 406);
    /** It is put together with others, which have fields of their own. */
    private static final Set<String> OPEN = Set.of("Problem");

    private static final JsonMapper JSON = JsonMapper.builder().build();
    private static final ObjectNode DESCRIPTION =
            closed((ObjectNode) JSON.readTree(Path.of("docs", "openapi.json").toFile()));
    private static final SchemaRegistry SCHEMAS = SchemaRegistry.withDialect(
            Dialects.getOpenApi31(), registry -> registry.schemas(Map.of(DOCUMENT, DESCRIPTION.toString())));
    private static final Map<Pattern, String> PATHS = DESCRIPTION.path("paths").propertyNames().stream()
            .collect(Collectors.toMap(path -> Pattern.compile(path.replaceAll("\\{\\w+\\}", "[^/]+")), path -> path));
    private static final Map<String, Schema> READY = new ConcurrentHashMap<>();

    private Described() {}

    static Answer check(String method, URI uri, Answer answer) {
        pathOf(uri.getPath()).ifPresent(path -> {
            JsonNode operation = DESCRIPTION.path("paths").path(path).path(method.toLowerCase(Locale.ROOT));
            if (!operation.isMissingNode() && !OF_NO_ROUTE.contains(answer.status())) {
                check(path, method.toLowerCase(Locale.ROOT), operation, answer);
            }
        });
        return answer;
    }

    private static void check(String path, String method, JsonNode operation, Answer answer) {
        String status = Integer.toString(answer.status());
        String where = "/paths/" + path.replace("/", "~1") + "/" + method + "/responses/" + status;
        JsonNode response = operation.path("responses").path(status);
        assertThat(response.isObject())
                .as("docs/openapi.json describes %s", answer)
                .isTrue();
        if (response.path("$ref").isString()) {
            where = response.path("$ref").asString().substring(1);
            response = DESCRIPTION.at(where);
        }
        assertThat(response.path("headers").propertyNames())
                .as("headers of %s", answer)
                .allSatisfy(name -> assertThat(answer.header(name)).as(name).isNotEmpty());
        String type = answer.header("Content-Type").replaceAll(";.*", "");
        JsonNode content = response.path("content");
        if (!content.isEmpty()) {
            assertThat(content.propertyNames()).as("%s", answer).contains(type);
        }
        if (type.endsWith("json") && content.path(type).has("schema")) {
            String pointer = "#" + where + "/content/" + type.replace("/", "~1") + "/schema";
            assertThat(schema(pointer).validate(answer.json())).as("%s", answer).isEmpty();
        }
    }

    private static Schema schema(String pointer) {
        return READY.computeIfAbsent(
                pointer,
                p -> SCHEMAS.getSchema(
                        SchemaLocation.of(DOCUMENT + p.replace("{", "%7B").replace("}", "%7D"))));
    }

    private static Optional<String> pathOf(String path) {
        return PATHS.entrySet().stream()
                .filter(entry -> entry.getKey().matcher(path).matches())
                .map(Map.Entry::getValue)
                .findFirst();
    }

    /** An answer may get further fields in time, and then the description gets them too. */
    private static ObjectNode closed(ObjectNode description) {
        description.path("components").path("schemas").properties().forEach(schema -> {
            if (!OPEN.contains(schema.getKey())
                    && (schema.getValue().has("properties") || schema.getValue().has("allOf"))) {
                ((ObjectNode) schema.getValue()).put("unevaluatedProperties", false);
            }
        });
        return description;
    }
}
