package org.bayhold.buildsheet;

import jakarta.persistence.CollectionTable;
import jakarta.persistence.ElementCollection;
import jakarta.persistence.Embeddable;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.JoinColumn;
import jakarta.persistence.OrderColumn;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.bayhold.catalog.Place;
import org.bayhold.journal.AppendOnly;
import org.bayhold.obd.Reading;
import org.hibernate.annotations.Immutable;
import org.jspecify.annotations.Nullable;

/**
 * The columns of one fact, for constraints and for questions in SQL. The journal entry at the same place in the car's
 * chain says the same and more; a start compares the two.
 */
@Entity
@Immutable
@Table(name = "fact")
@SuppressWarnings("UnusedVariable") // columns that only the database reads
class FactRow extends AppendOnly<UUID> {
    @Id
    private UUID id;

    private UUID vehicleId;
    private long seq;
    private String kind;
    private Instant effectiveAt;
    private Instant recordedAt;
    private UUID recordedBy;
    private @Nullable String category;
    private @Nullable String position;
    private @Nullable String action;
    private @Nullable UUID partSpecId;
    private @Nullable String ecuHardware;
    private @Nullable UUID calibrationId;
    private @Nullable String outcome;
    private @Nullable String source;
    private @Nullable String calid;
    private @Nullable String cvn;
    private @Nullable String fileSha256;
    private @Nullable UUID targetId;
    private @Nullable String basis;
    private @Nullable Integer failedChecks;
    private @Nullable String relatedCodes;
    private @Nullable Integer rules;
    private @Nullable String mapName;
    private @Nullable String verdict;
    private @Nullable String risk;

    @ElementCollection
    @CollectionTable(name = "inspection_line", joinColumns = @JoinColumn(name = "fact_id"))
    @OrderColumn(name = "line_no")
    @Immutable
    private List<LineRow> lines = new ArrayList<>();

    /** One line of an inspection. */
    @Embeddable
    static class LineRow {
        private String category;
        private @Nullable String position;
        private String state;
        private @Nullable UUID partSpecId;

        @SuppressWarnings("NullAway.Init") // Hibernate fills it
        protected LineRow() {}

        LineRow(Fact.Inspected.Line line) {
            this.category = line.place().category().name();
            this.position = line.place().position();
            this.state = line.state().name();
            this.partSpecId = line.partSpecId();
        }
    }

    @SuppressWarnings("NullAway.Init") // Hibernate fills it
    protected FactRow() {}

    FactRow(Fact fact) {
        Stamp stamp = fact.stamp();
        this.id = stamp.id();
        this.vehicleId = stamp.vehicleId();
        this.seq = stamp.seq();
        this.kind = FactKinds.of(fact);
        this.effectiveAt = stamp.effectiveAt();
        this.recordedAt = stamp.recordedAt();
        this.recordedBy = stamp.by();
        fact.tell(new Columns());
    }

    /** Which columns each kind of fact fills. */
    private final class Columns implements Fact.Listener {
        @Override
        public void arrived(Fact.Arrived fact) {}

        @Override
        public void partChanged(Fact.PartChanged fact) {
            place(fact.place());
            action = fact.action().name();
            partSpecId = fact.partSpecId();
            ecuHardware = fact.ecuHardware();
            source = fact.source().name();
        }

        @Override
        public void inspected(Fact.Inspected fact) {
            source = fact.source().name();
            fact.lines().forEach(line -> lines.add(new LineRow(line)));
        }

        @Override
        public void flashed(Fact.Flashed fact) {
            calibrationId = fact.calibrationId();
            outcome = fact.outcome().name();
            source = fact.source().name();
        }

        @Override
        public void readBack(Fact.ReadBack fact) {
            Reading reading = fact.reading();
            calid = reading.calid();
            cvn = reading.cvn();
            fileSha256 = reading.fileSha256();
            relatedCodes = RelatedCodes.column(fact.troubleCodes());
            source = fact.source().name();
        }

        @Override
        public void driveLogged(DriveLogged fact) {
            targetId = fact.again();
            fileSha256 = fact.fileSha256();
            calibrationId = fact.calibrationId();
            mapName = fact.map();
            verdict = fact.verdict().name();
            risk = fact.risk().name();
            source = fact.source().name();
        }

        @Override
        public void acknowledged(Fact.Acknowledged fact) {}

        @Override
        public void voided(Fact.Voided fact) {
            targetId = fact.targetId();
        }

        @Override
        public void retuneOpened(Fact.RetuneOpened fact) {
            targetId = fact.itemId();
        }

        @Override
        public void retuneJoined(Fact.RetuneJoined fact) {
            targetId = fact.itemId();
        }

        @Override
        public void retunePlanned(Fact.RetunePlanned fact) {
            targetId = fact.itemId();
        }

        @Override
        public void retuneLapsed(Fact.RetuneLapsed fact) {
            targetId = fact.itemId();
        }

        @Override
        public void cleared(Fact.Cleared fact) {
            targetId = fact.itemId();
            basis = fact.basis().name();
        }

        @Override
        public void handedOver(Fact.HandedOver fact) {
            basis = fact.basis().name();
            failedChecks = fact.failedChecks();
            rules = fact.rules();
        }

        @Override
        public void handoffRefused(Fact.HandoffRefused fact) {
            failedChecks = fact.failedChecks();
        }

        private void place(Place place) {
            category = place.category().name();
            position = place.position();
        }
    }

    @Override
    public UUID getId() {
        return id;
    }

    List<LineRow> lines() {
        return lines;
    }
}
