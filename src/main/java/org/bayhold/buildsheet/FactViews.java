package org.bayhold.buildsheet;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.bayhold.identity.People;
import org.bayhold.journal.CanonicalJson;
import org.bayhold.journal.PersonalData;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.NullNode;
import tools.jackson.databind.node.ObjectNode;

/** Facts as people read them: flat, with names and notes in place of the references that the record holds. */
@Component
public class FactViews {
    private final PersonalData personalData;
    private final People people;
    private final CanonicalJson json;

    FactViews(PersonalData personalData, People people, CanonicalJson json) {
        this.personalData = personalData;
        this.people = people;
        this.json = json;
    }

    /** Each fact as a JSON object with {@code id, kind, vehicleId, effectiveAt, recordedAt, by} and its own fields. */
    public List<ObjectNode> flat(Collection<? extends Fact> facts) {
        List<ObjectNode> trees =
                facts.stream().map(fact -> (ObjectNode) json.tree(fact)).toList();
        List<@Nullable UUID> personal = new ArrayList<>();
        trees.forEach(tree -> collect(tree, personal));
        PersonalData.Texts texts = personalData.readIds(personal);
        Map<UUID, String> names =
                people.names(facts.stream().map(fact -> fact.stamp().by()).toList());
        List<ObjectNode> flat = new ArrayList<>();
        int i = 0;
        for (Fact fact : facts) {
            flat.add(flat(fact, trees.get(i++), texts, names));
        }
        return flat;
    }

    /** Any record with its references to personal data replaced by the text, or by null where it was erased. */
    JsonNode readable(JsonNode record) {
        List<@Nullable UUID> personal = new ArrayList<>();
        collect(record, personal);
        return readable(record, personalData.readIds(personal));
    }

    private ObjectNode flat(Fact fact, ObjectNode tree, PersonalData.Texts texts, Map<UUID, String> names) {
        Stamp stamp = fact.stamp();
        ObjectNode flat = tree.objectNode();
        flat.put("id", stamp.id().toString());
        flat.put("kind", FactKinds.of(fact));
        flat.put("vehicleId", stamp.vehicleId().toString());
        flat.put("effectiveAt", stamp.effectiveAt().toString());
        flat.put("recordedAt", stamp.recordedAt().toString());
        flat.put("by", names.getOrDefault(stamp.by(), stamp.by().toString()));
        tree.remove("stamp");
        flatten(tree, texts, flat);
        return flat;
    }

    /** Places and readings are taken apart, references to personal data become the text or null. */
    private void flatten(ObjectNode from, PersonalData.Texts texts, ObjectNode to) {
        for (Map.Entry<String, JsonNode> field : from.properties()) {
            String name = field.getKey();
            JsonNode value = field.getValue();
            if ((name.equals("place") || name.equals("reading")) && value instanceof ObjectNode object) {
                flatten(object, texts, to);
            } else if (name.equals("decision") && value.isString()) {
                to.set("gate", json.parse(value.asString()));
            } else {
                to.set(name, readable(value, texts));
            }
        }
    }

    private JsonNode readable(JsonNode value, PersonalData.Texts texts) {
        if (isPersonal(value)) {
            String text = texts.of(UUID.fromString(value.get("id").asString()));
            return text == null ? NullNode.getInstance() : json.tree(text);
        }
        if (value instanceof ObjectNode object) {
            ObjectNode flat = object.objectNode();
            flatten(object, texts, flat);
            return flat;
        }
        if (value instanceof ArrayNode array) {
            ArrayNode flat = array.arrayNode();
            array.forEach(element -> flat.add(readable(element, texts)));
            return flat;
        }
        return value;
    }

    private static void collect(JsonNode node, List<@Nullable UUID> personal) {
        if (isPersonal(node)) {
            personal.add(UUID.fromString(node.get("id").asString()));
        } else {
            node.forEach(child -> collect(child, personal));
        }
    }

    private static boolean isPersonal(JsonNode node) {
        return node.isObject() && node.size() == 2 && node.has("id") && node.has("sha256");
    }
}
