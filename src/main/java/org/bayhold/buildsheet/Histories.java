package org.bayhold.buildsheet;

import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.bayhold.identity.Act;
import org.bayhold.identity.Caller;
import org.bayhold.identity.People;
import org.bayhold.journal.Entry;
import org.bayhold.journal.Journal;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

/** A car's whole record, in the order in which it was recorded, with what was struck out marked. */
@Component
public class Histories {
    private static final Set<String> HEAD = Set.of("id", "kind", "vehicleId", "effectiveAt", "recordedAt", "by");

    private final Journal journal;
    private final CarRecords records;
    private final FactViews views;
    private final People people;

    Histories(Journal journal, CarRecords records, FactViews views, People people) {
        this.journal = journal;
        this.records = records;
        this.views = views;
        this.people = people;
    }

    public List<HistoryView> of(UUID vehicleId, Instant knownAt, Caller caller) {
        List<Entry> entries = journal.entriesOf(vehicleId).stream()
                .filter(entry -> !entry.recordedAt().isAfter(knownAt))
                .toList();
        List<Fact> facts =
                entries.stream().flatMap(entry -> records.fact(entry).stream()).toList();
        Map<UUID, ObjectNode> flat = new HashMap<>();
        views.flat(facts)
                .forEach(node -> flat.put(UUID.fromString(node.get("id").asString()), node));
        Map<UUID, HistoryView.Voiding> voidings = voidings(facts, flat, knownAt);
        Map<UUID, String> names = people.names(entries.stream().map(Entry::by).toList());
        List<HistoryView> history = new ArrayList<>();
        for (Entry entry : entries) {
            JsonNode record = flat.containsKey(entry.id())
                    ? own(flat.get(entry.id()))
                    : forReader(views.readable(entry.record()), caller);
            history.add(new HistoryView(
                    entry.id(),
                    entry.kind(),
                    entry.seq(),
                    entry.effectiveAt(),
                    entry.recordedAt(),
                    names.getOrDefault(entry.by(), entry.by().toString()),
                    voidings.containsKey(entry.id()),
                    voidings.get(entry.id()),
                    record));
        }
        return history;
    }

    /** A registration or an amendment, without the owner's contact data where the reader's role does not see them. */
    private static JsonNode forReader(JsonNode record, Caller caller) {
        if (!caller.may(Act.SEE_CONTACTS) && record.get("owner") instanceof ObjectNode owner) {
            owner.remove(List.of("phone", "email"));
        }
        return record;
    }

    private static Map<UUID, HistoryView.Voiding> voidings(
            List<Fact> facts, Map<UUID, ObjectNode> flat, Instant knownAt) {
        Set<UUID> struckOut = Fold.voided(facts, knownAt);
        Map<UUID, HistoryView.Voiding> voidings = new HashMap<>();
        for (Fact fact : facts) {
            if (fact instanceof Fact.Voided voided
                    && struckOut.contains(voided.targetId())
                    && !struckOut.contains(voided.stamp().id())) {
                ObjectNode node =
                        java.util.Objects.requireNonNull(flat.get(voided.stamp().id()));
                voidings.put(
                        voided.targetId(),
                        new HistoryView.Voiding(
                                voided.stamp().id(),
                                voided.stamp().recordedAt(),
                                node.get("by").asString(),
                                text(node.get("reason")),
                                voided.replacedBy()));
            }
        }
        return voidings;
    }

    private static @Nullable String text(@Nullable JsonNode node) {
        return node == null || node.isNull() ? null : node.asString();
    }

    /** The fields of the record itself, without those that every record has. */
    private static ObjectNode own(@Nullable ObjectNode flat) {
        ObjectNode own = java.util.Objects.requireNonNull(flat).deepCopy();
        HEAD.forEach(own::remove);
        return own;
    }
}
