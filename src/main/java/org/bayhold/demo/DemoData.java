package org.bayhold.demo;

import java.io.IOException;
import java.io.InputStream;
import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.springframework.core.io.ClassPathResource;
import org.yaml.snakeyaml.LoaderOptions;
import org.yaml.snakeyaml.Yaml;
import org.yaml.snakeyaml.constructor.SafeConstructor;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

/**
 * The invented shop as it is written down under {@code demo/}.
 *
 * @param parts the catalogue, by the names that cars and calibrations have for its parts
 * @param calibrations by the names that cars have for them
 */
record DemoData(Map<String, ObjectNode> parts, Map<String, ObjectNode> calibrations, List<DemoCar> cars) {
    private static final JsonMapper JSON = JsonMapper.builder().build();

    /**
     * One car.
     *
     * @param shows which situation of docs/rules.md it is there for
     */
    record DemoCar(String shows, ObjectNode car, @Nullable List<Step> record) {
        List<Step> steps() {
            return record == null ? List.of() : record;
        }
    }

    /** One thing done: everything but {@code by, does, ago, as, promisedIn} is the body of the call. */
    record Step(ObjectNode fields) {
        @com.fasterxml.jackson.annotation.JsonCreator(
                mode = com.fasterxml.jackson.annotation.JsonCreator.Mode.DELEGATING)
        Step {}

        String by() {
            return fields.path("by").asString();
        }

        String does() {
            return fields.path("does").asString();
        }

        /** How long before the shop was filled; null for now. */
        @Nullable Duration ago() {
            String ago = fields.path("ago").asString("");
            return ago.isEmpty() ? null : Duration.parse(ago.endsWith("d") ? "P" + ago : "PT" + ago);
        }

        /** How long after the shop was filled something is promised for; negative where it is overdue, null where it is not. */
        @Nullable Duration promisedIn() {
            String in = fields.path("promisedIn").asString("");
            return in.isEmpty() ? null : Duration.parse("PT" + in);
        }

        String as() {
            return fields.path("as").asString("");
        }

        ObjectNode body() {
            return fields.deepCopy().remove(List.of("by", "does", "ago", "as", "promisedIn"));
        }
    }

    static DemoData read() {
        JsonNode catalogue = yaml("demo/parts.yml");
        List<DemoCar> cars = new ArrayList<>();
        for (String file : List.of("demo/cars.yml", "demo/more-cars.yml")) {
            yaml(file).forEach(car -> cars.add(JSON.treeToValue(car, DemoCar.class)));
        }
        return new DemoData(objects(catalogue.path("parts")), objects(catalogue.path("calibrations")), cars);
    }

    /** The car that is registered last: where it is, the shop is filled. */
    DemoCar last() {
        return cars.get(cars.size() - 1);
    }

    private static Map<String, ObjectNode> objects(JsonNode named) {
        Map<String, ObjectNode> objects = new LinkedHashMap<>();
        named.forEachEntry((name, object) -> objects.put(name, (ObjectNode) object));
        return objects;
    }

    private static JsonNode yaml(String file) {
        try (InputStream in = new ClassPathResource(file).getInputStream()) {
            Object read = new Yaml(new SafeConstructor(new LoaderOptions())).load(in);
            return JSON.valueToTree(read);
        } catch (IOException e) {
            throw new IllegalStateException("the demo shop cannot be read: " + file, e);
        }
    }
}
