package org.bayhold.gate;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.bayhold.buildsheet.CarRecords;
import org.bayhold.buildsheet.Cause;
import org.bayhold.buildsheet.Fact;
import org.bayhold.journal.CanonicalJson;
import org.bayhold.journal.Entry;
import org.bayhold.journal.JournalledRow;
import org.bayhold.journal.JournalledRows;
import org.bayhold.journal.JournalledTable;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * Policy, retune items and their causes say what their entries say; and the item that a car's head calls open is the one
 * that its record has opened and not closed.
 */
@Component
class JournalledGate implements JournalledRows {
    private static final String POLICIES = "policy_fact";
    private static final String ITEMS = "retune_item";
    private static final String CAUSES = "retune_cause";
    private static final String OPEN_ITEM = "open_item_id";
    private static final Set<String> OF_ITEMS = Set.of("RETUNE_OPENED", "RETUNE_JOINED", "RETUNE_LAPSED", "CLEARED");

    private final CarRecords records;
    private final CanonicalJson json;

    JournalledGate(CarRecords records, CanonicalJson json) {
        this.records = records;
        this.json = json;
    }

    @Override
    public List<JournalledTable> tables() {
        return List.of(
                JournalledTable.ofEntries(POLICIES, Set.of(PolicyBook.SET), "id"),
                JournalledTable.ofOthers(ITEMS, "id"),
                JournalledTable.ofOthers(CAUSES, "item_id", "code", "record_id"));
    }

    @Override
    public List<JournalledRow> rowsOf(Entry entry) {
        if (entry.kind().equals(PolicyBook.SET)) {
            Policy policy = policy(json, entry.record());
            return List.of(JournalledRow.of(
                    POLICIES, new PolicyRow(entry.id(), policy, entry.recordedAt(), entry.by(), json)));
        }
        Fact fact = ofItems(entry);
        List<JournalledRow> rows = new ArrayList<>();
        if (fact instanceof Fact.RetuneOpened opened) {
            rows.add(JournalledRow.keyed(ITEMS, "id", opened.itemId())
                    .with("vehicle_id", entry.chain())
                    .with("opened_at", entry.recordedAt()));
            rows.addAll(causes(opened.itemId(), opened.causes(), entry.recordedAt()));
        } else if (fact instanceof Fact.RetuneJoined joined) {
            rows.addAll(causes(joined.itemId(), joined.causes(), entry.recordedAt()));
        } else if (fact instanceof Fact.RetuneLapsed lapsed) {
            rows.add(closed(lapsed.itemId(), entry.recordedAt(), RetuneItemRow.CAUSES_VOIDED));
        } else if (fact instanceof Fact.Cleared cleared) {
            rows.add(
                    closed(cleared.itemId(), entry.recordedAt(), cleared.basis().name()));
        }
        return rows;
    }

    /**
     * A version from before trouble codes could be asked about asked about them, as its row has it. One from before the
     * thresholds of drive logs were policy has none, and neither has its row.
     */
    static Policy policy(CanonicalJson json, JsonNode record) {
        ObjectNode policy = ((ObjectNode) record).deepCopy();
        if (!policy.has("troubleCodesChecked")) {
            policy.put("troubleCodesChecked", Policy.DEFAULT.troubleCodesChecked());
        }
        return json.read(policy, Policy.class);
    }

    private static List<JournalledRow> causes(UUID itemId, List<Cause> causes, Instant recordedAt) {
        return causes.stream()
                .map(cause -> JournalledRow.of(CAUSES, new CauseRow(itemId, cause, recordedAt)))
                .toList();
    }

    private static JournalledRow closed(UUID itemId, Instant at, String basis) {
        return JournalledRow.keyed(ITEMS, "id", itemId).with("cleared_at", at).with("basis", basis);
    }

    @Override
    public JournalledRow present(@Nullable JournalledRow before, Entry entry) {
        JournalledRow head = before == null ? JournalledRow.head(entry.chain()).with(OPEN_ITEM, null) : before;
        Fact fact = ofItems(entry);
        if (fact instanceof Fact.RetuneOpened opened) {
            return head.with(OPEN_ITEM, opened.itemId());
        }
        return fact instanceof Fact.RetuneLapsed || fact instanceof Fact.Cleared ? head.with(OPEN_ITEM, null) : head;
    }

    private @Nullable Fact ofItems(Entry entry) {
        return OF_ITEMS.contains(entry.kind()) ? records.fact(entry).orElse(null) : null;
    }

    @Override
    public List<CrossCheck> crossChecks() {
        return List.of(
                new CrossCheck("the head of the chain names another open retune item than the list of items", """
                        select h.chain_id, h.seq, e.id as record_id from chain_head h
                        left join retune_item i on i.vehicle_id = h.chain_id and i.cleared_at is null
                        left join journal_entry e on e.chain_id = h.chain_id and e.seq = h.seq
                        where h.open_item_id is distinct from i.id"""),
                new CrossCheck("there is a row in retune_item and no entry that opens it", """
                        select i.vehicle_id as chain_id, cast(null as bigint) as seq, i.id as record_id
                        from retune_item i where not exists
                          (select 1 from fact f where f.target_id = i.id and f.kind = 'RETUNE_OPENED')"""),
                new CrossCheck("the item that it opens is closed in retune_item, and no entry closes it", """
                        select f.vehicle_id as chain_id, f.seq, f.id as record_id
                        from retune_item i join fact f on f.target_id = i.id and f.kind = 'RETUNE_OPENED'
                        where i.cleared_at is not null and not exists (select 1 from fact c
                          where c.target_id = i.id and c.kind in ('CLEARED', 'RETUNE_LAPSED'))"""),
                new CrossCheck("there is a row in retune_cause and no entry for it", """
                        select cast(null as uuid) as chain_id, cast(null as bigint) as seq, c.record_id
                        from retune_cause c where not exists (select 1 from fact f where f.target_id = c.item_id
                          and f.recorded_at = c.recorded_at and f.kind in ('RETUNE_OPENED', 'RETUNE_JOINED'))"""));
    }
}
