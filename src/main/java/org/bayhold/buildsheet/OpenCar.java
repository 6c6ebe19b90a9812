package org.bayhold.buildsheet;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.bayhold.journal.CanonicalJson;
import org.bayhold.journal.Ids;
import org.bayhold.journal.OpenChain;
import tools.jackson.databind.node.ObjectNode;

/** One car during one write, under its lock: its record so far, and the way to append to it. */
public final class OpenCar {
    private final OpenChain chain;
    private final FactRows rows;
    private final CanonicalJson json;
    private final List<Fact> facts;
    private CarRecord record;

    OpenCar(OpenChain chain, CarRecord record, FactRows rows, CanonicalJson json) {
        this.chain = chain;
        this.record = record;
        this.rows = rows;
        this.json = json;
        this.facts = new ArrayList<>(record.facts());
    }

    /** The chain: for its time, for personal data, and for the item that is open. */
    public OpenChain chain() {
        return chain;
    }

    public UUID vehicleId() {
        return chain.chainId();
    }

    /** The record with everything appended so far. */
    public CarRecord record() {
        return record;
    }

    /** The car at {@code effectiveAt}, with everything appended so far. */
    public CarState at(Instant effectiveAt) {
        return record.at(effectiveAt, chain.recordedAt());
    }

    /** The car as it stands now. */
    public CarState now() {
        return at(chain.recordedAt());
    }

    /** The stamp of the fact that is appended next. */
    public Stamp stamp(Instant effectiveAt) {
        return stamp(Ids.next(), effectiveAt);
    }

    Stamp stamp(UUID id, Instant effectiveAt) {
        return new Stamp(id, chain.chainId(), chain.nextSeq(), effectiveAt, chain.recordedAt(), chain.by());
    }

    /** Appends a fact that was stamped last: journal entry and row. */
    public void append(Fact fact) {
        journal(fact);
        rows.save(new FactRow(fact));
    }

    /** Appends a CLEAR handover, which the database itself admits only while no item is open. */
    public void appendClear(Fact.HandedOver fact) {
        Stamp stamp = fact.stamp();
        journal(fact);
        int written = rows.insertClearHandover(
                stamp.id(),
                stamp.vehicleId(),
                stamp.seq(),
                stamp.effectiveAt(),
                stamp.recordedAt(),
                stamp.by(),
                fact.failedChecks(),
                fact.rules());
        if (written != 1) {
            throw new IllegalStateException("the database refuses a CLEAR handover that the gate let through");
        }
    }

    private void journal(Fact fact) {
        Stamp stamp = fact.stamp();
        ObjectNode node = (ObjectNode) json.tree(fact);
        node.remove("stamp");
        chain.append(FactKinds.of(fact), stamp.id(), stamp.effectiveAt(), node);
        facts.add(fact);
        record = new CarRecord(record.registration(), facts, record.revisions(), record.groups(), record.corrections());
    }
}
