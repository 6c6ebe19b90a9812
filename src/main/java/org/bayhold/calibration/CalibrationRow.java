package org.bayhold.calibration;

import jakarta.persistence.CollectionTable;
import jakarta.persistence.Column;
import jakarta.persistence.ElementCollection;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.Id;
import jakarta.persistence.JoinColumn;
import jakarta.persistence.OrderColumn;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;
import org.bayhold.journal.AppendOnly;
import org.bayhold.journal.CanonicalJson;
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

    @ElementCollection
    @CollectionTable(name = "calibration_map", joinColumns = @JoinColumn(name = "calibration_id"))
    @OrderColumn(name = "row_no")
    @Immutable
    private List<MapRow> maps;

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
        this.coverage = CoverageRow.rows(issued.coverage());
        this.maps = MapRow.rows(issued.maps() == null ? List.of() : issued.maps());
    }

    static String nameKey(String name, String revision) {
        return (name + "\n" + revision).toLowerCase(Locale.ROOT);
    }

    @Override
    public UUID getId() {
        return id;
    }

    Revision revision(List<CalibrationMap> maps, @Nullable Instant withdrawnAt, CanonicalJson json) {
        return new Revision(
                id,
                name,
                revision,
                ecuHardware,
                new Reading(calid, cvn, fileSha256),
                purpose,
                CoverageRow.lines(coverage),
                maps,
                assumed(json).isCompressionIgnition(),
                recordedAt,
                withdrawnAt);
    }

    @SuppressWarnings("unchecked") // assumes is written as a JSON object
    Assumed assumed(CanonicalJson json) {
        return new Assumed(json.read(assumes, Map.class), boostTargetKpa);
    }

    List<CoverageRow> coverage() {
        return coverage;
    }

    List<MapRow> maps() {
        return maps;
    }

    @Nullable String limits() {
        return limits;
    }

    @Nullable UUID noteId() {
        return noteId;
    }
}
