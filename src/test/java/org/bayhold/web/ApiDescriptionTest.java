package org.bayhold.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.ResourceBundle;
import java.util.Set;
import java.util.TreeSet;
import org.bayhold.catalog.Attribute;
import org.bayhold.catalog.Category;
import org.bayhold.catalog.PartAttributes;
import org.bayhold.support.Answer;
import org.bayhold.support.RunningBayhold;
import org.junit.jupiter.api.Test;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.SerializationFeature;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

class ApiDescriptionTest {
    private static final Path FILE = Path.of("docs", "openapi.json");
    private static final JsonMapper JSON =
            JsonMapper.builder().enable(SerializationFeature.INDENT_OUTPUT).build();

    private static final JsonNode SERVED = RunningBayhold.onH2()
            .shop()
            .anonymous()
            .getOutside("/v3/api-docs")
            .is(200)
            .json();

    @Test
    void theFileSaysWhatTheServerSays() throws IOException {
        String served = JSON.writeValueAsString(sorted(withoutServers())).replace("\r\n", "\n") + "\n";
        if (Boolean.getBoolean("bayhold.openapi.write")) {
            Files.writeString(FILE, served);
        }
        assertThat(Files.readString(FILE))
                .as("docs/openapi.json; to renew it run"
                        + " mvn test -Dtest=ApiDescriptionTest -Dbayhold.openapi.write=true, and look at what changed")
                .isEqualTo(served);
    }

    @Test
    void itIsTheSameWhoeverAsksAndHoweverOften() {
        var anonymous = RunningBayhold.onH2().shop().anonymous();
        Answer again =
                anonymous.withHeader("X-Forwarded-Host", "elsewhere.example").getOutside("/v3/api-docs");

        assertThat(again.is(200).json()).isEqualTo(SERVED);
    }

    @Test
    void everyReferenceLeadsSomewhereAndNothingLiesUnused() {
        Set<String> references = new TreeSet<>();
        collect(SERVED, references);
        Set<String> there = new TreeSet<>();
        for (String kind : List.of("schemas", "responses")) {
            SERVED.path("components")
                    .path(kind)
                    .propertyNames()
                    .forEach(name -> there.add("#/components/" + kind + "/" + name));
        }
        assertThat(there).containsAll(references);
        assertThat(references).containsAll(there);
    }

    @Test
    void everyRouteAndModuleHasItsSentenceAndNoSentenceIsLeftOver() {
        Set<String> wanted = new TreeSet<>();
        SERVED.path("paths")
                .values()
                .forEach(path -> path.values()
                        .forEach(operation -> wanted.add(
                                "operation." + operation.path("operationId").asString())));
        SERVED.path("tags")
                .values()
                .forEach(tag -> wanted.add("module." + tag.path("name").asString()));

        assertThat(ResourceBundle.getBundle("openapi").keySet().stream()
                        .filter(key -> key.startsWith("operation.") || key.startsWith("module.")))
                .containsExactlyInAnyOrderElementsOf(wanted);
    }

    /** One definition refuses a value and describes what is taken. */
    @Test
    void whatMayBeRecordedOfAPartIsDescribedWithItsRange() {
        JsonNode attributes = SERVED.path("components")
                .path("schemas")
                .path("PartSpecRequest")
                .path("properties")
                .path("attributes");
        JsonNode flow = attributes.path("properties").path("flowCcPerMin");

        assertThat(flow.path("minimum").doubleValue()).isEqualTo(PartAttributes.FLOW_CC_PER_MIN.least());
        assertThat(flow.path("maximum").doubleValue()).isEqualTo(PartAttributes.FLOW_CC_PER_MIN.most());
        assertThat(flow.path("description").asString()).contains("INJECTORS");
        assertThat(attributes.path("additionalProperties").booleanValue()).isFalse();
        assertThat(attributes.path("properties").propertyNames())
                .containsAll(Arrays.stream(Category.values())
                        .flatMap(category -> PartAttributes.of(category).attributes().stream())
                        .map(Attribute::name)
                        .toList());
    }

    /** Where a server listens is no part of the contract. */
    private static JsonNode withoutServers() {
        ObjectNode copy = (ObjectNode) SERVED.deepCopy();
        assertThat(copy.remove("servers").toString()).isEqualTo("[{\"url\":\"/\"}]");
        return copy;
    }

    private static void collect(JsonNode node, Set<String> references) {
        if (node.path("$ref").isString()) {
            references.add(node.path("$ref").asString());
        }
        node.values().forEach(child -> collect(child, references));
    }

    private static JsonNode sorted(JsonNode node) {
        if (node.isObject()) {
            ObjectNode sorted = JSON.createObjectNode();
            new TreeSet<>(node.propertyNames()).forEach(name -> sorted.set(name, sorted(node.get(name))));
            return sorted;
        }
        if (node.isArray()) {
            var sorted = JSON.createArrayNode();
            node.values().forEach(child -> sorted.add(sorted(child)));
            return sorted;
        }
        return node;
    }
}
