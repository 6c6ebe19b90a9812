package org.bayhold.calibration;

import jakarta.persistence.CollectionTable;
import jakarta.persistence.Column;
import jakarta.persistence.ElementCollection;
import jakarta.persistence.Embeddable;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.Id;
import jakarta.persistence.JoinColumn;
import jakarta.persistence.OrderColumn;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.UUID;
import org.bayhold.catalog.Category;
import org.bayhold.catalog.Place;
import org.bayhold.journal.AppendOnly;
import org.bayhold.obd.Reading;
import org.hibernate.annotations.Immutable;
import org.jspecify.annotations.Nullable;

/** A revision as issued. */
@Entity
@Immutable
@Table(name = "calibration")
@SuppressWarnings("UnusedVariable") // columns that only the database reads
class CalibrationRow extends AppendOnly<UUID> {
    @Id
    private UUID id;

    private String name;
    private String revision;
    private String nameKey;
    private String ecuHardware;
    private @Nullable String calid;
    private @Nullable String cvn;
    private @Nullable String fileSha256;

    @Enumerated(EnumType.STRING)
    private Purpose purpose;

    private @Nullable String limits;

    @Column(columnDefinition = "text")
    private String assumes;

    private @Nullable Double boostTargetKpa;
    private @Nullable UUID noteId;
    private Instant recordedAt;
    private UUID recordedBy;

    @ElementCollection
    @CollectionTable(name = "calibration_coverage", joinColumns = @JoinColumn(name = "calibration_id"))
    @OrderColumn(name = "row_no")
    @Immutable
    private List<CoverageRow> coverage;

    /** One part of one line of coverage; a line without parts has one row without a part. */
    @Embeddable
    static class CoverageRow {
        private int lineNo;

        @Enumerated(EnumType.STRING)
        private Category category;

        private @Nullable String position;
        private @Nullable UUID partSpecId;
        private boolean factoryAllowed;
        private boolean noneAllowed;

        @SuppressWarnings("NullAway.Init") // Hibernate fills it
        protected CoverageRow() {}

        CoverageRow(int lineNo, CoverageLine line, @Nullable UUID partSpecId) {
            this.lineNo = lineNo;
            this.category = line.place().category();
            this.position = line.place().position();
            this.partSpecId = partSpecId;
            this.factoryAllowed = line.factoryAllowed();
            this.noneAllowed = line.noneAllowed();
        }
    }

    @SuppressWarnings("NullAway.Init") // Hibernate fills it
    protected CalibrationRow() {}

    CalibrationRow(UUID id, CalibrationIssued issued, String assumes, Instant recordedAt, UUID recordedBy) {
        this.id = id;
        this.name = issued.name();
        this.revision = issued.revision();
        this.nameKey = nameKey(issued.name(), issued.revision());
        this.ecuHardware = issued.ecuHardware();
        this.calid = issued.calid();
        this.cvn = issued.cvn();
        this.fileSha256 = issued.fileSha256();
        this.purpose = issued.purpose();
        this.limits = issued.limits();
        this.assumes = assumes;
        this.boostTargetKpa = issued.boostTargetKpa();
        this.noteId = issued.note() == null ? null : issued.note().id();
        this.recordedAt = recordedAt;
        this.recordedBy = recordedBy;
        this.coverage = rows(issued.coverage());
    }

    private static List<CoverageRow> rows(List<CoverageLine> lines) {
        List<CoverageRow> rows = new ArrayList<>();
        for (int i = 0; i < lines.size(); i++) {
            CoverageLine line = lines.get(i);
            if (line.partSpecIds().isEmpty()) {
                rows.add(new CoverageRow(i, line, null));
            }
            for (UUID partSpecId : line.partSpecIds()) {
                rows.add(new CoverageRow(i, line, partSpecId));
            }
        }
        return rows;
    }

    static String nameKey(String name, String revision) {
        return (name + "\n" + revision).toLowerCase(Locale.ROOT);
    }

    @Override
    public UUID getId() {
        return id;
    }

    Revision revision(@Nullable Instant withdrawnAt) {
        return new Revision(
                id,
                name,
                revision,
                ecuHardware,
                new Reading(calid, cvn, fileSha256),
                purpose,
                coverageLines(),
                recordedAt,
                withdrawnAt);
    }

    private List<CoverageLine> coverageLines() {
        List<CoverageLine> lines = new ArrayList<>();
        int from = 0;
        for (int to = 1; to <= coverage.size(); to++) {
            if (to == coverage.size() || coverage.get(to).lineNo != coverage.get(from).lineNo) {
                CoverageRow first = coverage.get(from);
                List<UUID> parts = coverage.subList(from, to).stream()
                        .map(row -> row.partSpecId)
                        .filter(Objects::nonNull)
                        .map(Objects::requireNonNull)
                        .toList();
                lines.add(new CoverageLine(
                        new Place(first.category, first.position), parts, first.factoryAllowed, first.noneAllowed));
                from = to;
            }
        }
        return lines;
    }

    List<CoverageRow> coverage() {
        return coverage;
    }

    @Nullable String limits() {
        return limits;
    }

    String assumes() {
        return assumes;
    }

    @Nullable Double boostTargetKpa() {
        return boostTargetKpa;
    }

    @Nullable UUID noteId() {
        return noteId;
    }
}
