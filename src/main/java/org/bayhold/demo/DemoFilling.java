package org.bayhold.demo;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.bayhold.demo.DemoData.DemoCar;
import org.bayhold.demo.DemoData.Step;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/** Tells the API what stands in {@link DemoData}, in order, each thing by the person who may do it. */
final class DemoFilling {
    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

    private final DemoCalls calls;
    private final DemoData data;
    private final Map<String, String> partIds = new HashMap<>();
    private final Map<String, String> calibrationIds = new HashMap<>();
    private @Nullable Instant start;

    DemoFilling(DemoCalls calls, DemoData data) {
        this.calls = calls;
        this.data = data;
    }

    void fill() {
        data.parts().forEach(this::part);
        // most of the shop's cars left before it asked for drive logs, and say so
        calls.put("manager", "/policy", NODES.objectNode().put("driveLogRequired", false));
        data.calibrations().forEach(this::calibration);
        data.cars().forEach(this::car);
    }

    private void part(String name, ObjectNode part) {
        JsonNode answer = calls.post("tech", "/part-specs", "part-" + name, part);
        partIds.put(name, answer.path("id").asString());
        if (start == null) {
            // of two servers that fill one shop, both date everything from the same moment
            start = Instant.parse(answer.path("recordedAt").asString());
        }
    }

    private void calibration(String name, ObjectNode calibration) {
        ObjectNode body = calibration.deepCopy();
        ArrayNode coverage = NODES.arrayNode();
        for (JsonNode line : body.remove("covers")) {
            coverage.add(covered((ObjectNode) line));
        }
        body.set("coverage", coverage);
        calibrationIds.put(
                name,
                calls.post("calibrator", "/calibrations", "calibration-" + name, body)
                        .path("id")
                        .asString());
    }

    private ObjectNode covered(ObjectNode named) {
        ObjectNode line = named.deepCopy();
        ArrayNode ids = NODES.arrayNode();
        for (JsonNode part : line.remove("parts")) {
            line.set("category", part(part).path("category"));
            ids.add(id(partIds, part));
        }
        line.set("partSpecIds", ids);
        return line;
    }

    private void car(DemoCar car) {
        String name = name(car);
        String id = calls.post("writer", "/vehicles", "car-" + name, car.car())
                .path("id")
                .asString();
        CarBeingFilled filled = new CarBeingFilled(name, id);
        car.steps().forEach(filled::take);
    }

    static String name(DemoCar car) {
        return car.car().has("vin")
                ? car.car().path("vin").asString()
                : car.car().path("frameNumber").asString();
    }

    /** What the steps of one car refer to. */
    private final class CarBeingFilled {
        private final String name;
        private final String id;
        private final Map<String, String> records = new HashMap<>();
        private int steps;
        private String retuneItem = "";

        CarBeingFilled(String name, String id) {
            this.name = name;
            this.id = id;
        }

        void take(Step step) {
            ObjectNode body = resolved(step);
            String path = switch (step.does()) {
                case "sign-off" -> "/retune-items/" + retuneItem + "/clearance";
                case "strike-out" -> "/records/" + id(records, body.remove("record")) + "/voiding";
                case "withdrawal" ->
                    "/calibrations/" + body.remove("calibrationId").asString() + "/withdrawal";
                case "corrections" -> "/part-specs/" + body.remove("partSpecId").asString() + "/corrections";
                case "benefit-notes" ->
                    "/part-specs/" + body.remove("partSpecId").asString() + "/benefit-notes";
                case "plan" -> "/retune-items/" + retuneItem;
                case "advice" -> "/advice";
                case "planned-work" -> "/advice/" + id(records, body.remove("record")) + "/planned-work";
                default -> "/vehicles/" + id + "/" + step.does();
            };
            if (step.does().equals("advice")) {
                body.put("vehicleId", id);
            }
            String key = name + "-" + ++steps;
            if (step.does().equals("drive-logs")) {
                calls.postFile(step.by(), path, key, drive(name), fields(body));
                return;
            }
            JsonNode answer = step.does().equals("plan")
                    ? calls.patch(step.by(), path, key, body)
                    : calls.post(step.by(), path, key, body);
            if (answer.path("retuneItemId").isString()) {
                retuneItem = answer.path("retuneItemId").asString();
            }
            if (!step.as().isEmpty()) {
                records.put(step.as(), answer.path("id").asString());
            }
        }
    }

    /** The drive that comes with the demo, with the car's number above its header: each car's file is its own. */
    private static byte[] drive(String name) {
        try (InputStream in = Objects.requireNonNull(DemoFilling.class.getResourceAsStream("/demo/drive.csv"))) {
            return (name + "\n" + new String(in.readAllBytes(), StandardCharsets.UTF_8))
                    .getBytes(StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Map<String, String> fields(ObjectNode body) {
        Map<String, String> fields = new HashMap<>();
        body.properties()
                .forEach(field -> fields.put(field.getKey(), field.getValue().asString()));
        return fields;
    }

    /** The body of a step, with ids in place of names and a time in place of "ago". */
    private ObjectNode resolved(Step step) {
        ObjectNode body = withPart(step.body(), step.does().equals("part-changes"));
        if (body.has("calibration")) {
            body.put("calibrationId", id(calibrationIds, body.remove("calibration")));
        }
        if (body.has("reads")) {
            String read = body.remove("reads").asString();
            ObjectNode calibration = Objects.requireNonNull(data.calibrations().get(read), read);
            body.set("calid", calibration.path("calid"));
            body.set("cvn", calibration.path("cvn"));
        }
        if (body.has("lines")) {
            ArrayNode lines = NODES.arrayNode();
            for (JsonNode line : body.remove("lines")) {
                lines.add(found((ObjectNode) line));
            }
            body.set("lines", lines);
        }
        if (body.has("proposed")) {
            ArrayNode proposed = NODES.arrayNode();
            body.remove("proposed").forEach(change -> proposed.add(withPart((ObjectNode) change.deepCopy(), true)));
            body.set("proposed", proposed);
        }
        if (step.does().equals("part-changes") && !body.has("source")) {
            body.put("source", "SHOP");
        }
        Duration ago = step.ago();
        if (ago != null) {
            body.put("effectiveAt", Objects.requireNonNull(start).minus(ago).toString());
        }
        Duration promised = step.promisedIn();
        if (promised != null) {
            body.put("promisedAt", Objects.requireNonNull(start).plus(promised).toString());
        }
        return body;
    }

    private ObjectNode found(ObjectNode line) {
        ObjectNode found = withPart(line.deepCopy(), true);
        return found.has("partSpecId") ? found.put("state", "PART") : found;
    }

    private ObjectNode withPart(ObjectNode body, boolean withCategory) {
        if (body.has("part")) {
            JsonNode part = body.remove("part");
            body.put("partSpecId", id(partIds, part));
            if (withCategory) {
                body.set("category", part(part).path("category"));
            }
        }
        return body;
    }

    private ObjectNode part(JsonNode name) {
        return Objects.requireNonNull(data.parts().get(name.asString()), name.asString());
    }

    private static String id(Map<String, String> ids, JsonNode name) {
        return Objects.requireNonNull(ids.get(name.asString()), name.asString());
    }

    /** Whether the shop is there already. */
    static boolean isFilled(DemoCalls calls, DemoData data) {
        JsonNode found = calls.get("writer", "/vehicles?vin={vin}", name(data.last()));
        return !List.copyOf(found.path("items").values()).isEmpty();
    }
}
