package org.bayhold.calibration;

import java.util.Collection;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.bayhold.journal.CanonicalJson;
import org.bayhold.journal.Page;
import org.bayhold.obd.Reading;
import org.springframework.data.domain.Limit;
import org.springframework.stereotype.Component;

/** Reading revisions. */
@Component
public class Calibrations {
    private static final int MOST = 500;

    private final CalibrationRows rows;
    private final CanonicalJson json;

    Calibrations(CalibrationRows rows, CanonicalJson json) {
        this.rows = rows;
        this.json = json;
    }

    /** Revisions with their coverage, maps and withdrawal, in the order in which they were issued; unknown ids are left out. */
    public List<Revision> revisions(Collection<UUID> ids) {
        if (ids.isEmpty()) {
            return List.of();
        }
        return rows.whole(Set.copyOf(ids)).values().stream()
                .map(whole -> whole.revision(json))
                .sorted(Comparator.comparing(Revision::recordedAt).thenComparing(Revision::id))
                .toList();
    }

    /** The revisions that were issued for this ECU hardware, the newest first. */
    public List<Revision> issuedFor(String ecuHardware) {
        List<UUID> ids = rows.find(ecuHardware, "%", new UUID(0, 0), Limit.of(MOST));
        return revisions(ids).stream()
                .sorted(Comparator.comparing(Revision::recordedAt).reversed())
                .toList();
    }

    public Optional<Revision> revision(UUID id) {
        return revisions(List.of(id)).stream().findFirst();
    }

    /** Revisions whose name or CALID holds the text. */
    public List<Revision> search(String text, int atMost) {
        return revisions(rows.find(null, Page.like(text), Page.after(null), Limit.of(atMost)));
    }

    /** What a revision may be used for in the meantime. */
    public Optional<String> limits(UUID id) {
        return rows.findById(id).map(CalibrationRow::limits);
    }

    /** What a revision assumes of the car. */
    public Optional<Assumed> assumed(UUID id) {
        return rows.findById(id).map(row -> row.assumed(json));
    }

    /** The ids of the revisions that an ECU with this reading may run. */
    public List<UUID> idsShownBy(Reading reading) {
        List<UUID> ids = new java.util.ArrayList<>();
        if (reading.calid() != null && reading.cvn() != null) {
            ids.addAll(rows.reporting(reading.calid(), reading.cvn()));
        }
        if (reading.fileSha256() != null) {
            ids.addAll(rows.ofFile(reading.fileSha256()));
        }
        return ids.stream().distinct().toList();
    }

    /** The ids of all revisions that an ECU with one of these readings may run, and perhaps of more. */
    public Set<UUID> idsShownByAny(Collection<Reading> readings) {
        Set<String> calids = new HashSet<>();
        Set<String> files = new HashSet<>();
        for (Reading reading : readings) {
            if (reading.calid() != null) {
                calids.add(reading.calid());
            }
            if (reading.fileSha256() != null) {
                files.add(reading.fileSha256());
            }
        }
        Set<UUID> ids = new HashSet<>();
        if (!calids.isEmpty()) {
            ids.addAll(rows.reportingAny(calids));
        }
        if (!files.isEmpty()) {
            ids.addAll(rows.ofAnyFile(files));
        }
        return ids;
    }
}
