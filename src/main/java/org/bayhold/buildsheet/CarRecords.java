package org.bayhold.buildsheet;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Stream;
import org.bayhold.calibration.Calibrations;
import org.bayhold.calibration.Revision;
import org.bayhold.catalog.Catalog;
import org.bayhold.catalog.Category;
import org.bayhold.journal.CanonicalJson;
import org.bayhold.journal.Entry;
import org.bayhold.journal.Journal;
import org.bayhold.obd.Reading;
import org.bayhold.refusal.Refusal;
import org.bayhold.vehicle.Baseline;
import org.bayhold.vehicle.Registration;
import org.bayhold.vehicle.Vehicles;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

/** Reads the record of a car. */
@Component
public class CarRecords {
    private final Journal journal;
    private final Vehicles vehicles;
    private final Calibrations calibrations;
    private final Catalog catalog;
    private final FactRows rows;
    private final CanonicalJson json;

    CarRecords(
            Journal journal,
            Vehicles vehicles,
            Calibrations calibrations,
            Catalog catalog,
            FactRows rows,
            CanonicalJson json) {
        this.journal = journal;
        this.vehicles = vehicles;
        this.calibrations = calibrations;
        this.catalog = catalog;
        this.rows = rows;
        this.json = json;
    }

    /** @throws Refusal NOT_FOUND where there is no such car */
    @Transactional(readOnly = true)
    public CarRecord of(UUID vehicleId) {
        Registration registration = registration(vehicleId);
        List<Fact> facts = facts(vehicleId);
        return record(registration, facts, revisionsOf(registration, facts));
    }

    /** @throws Refusal NOT_FOUND where there is no such car */
    public void require(UUID vehicleId) {
        Registration ignored = registration(vehicleId);
    }

    Registration registration(UUID vehicleId) {
        return vehicles.registration(vehicleId).orElseThrow(() -> Refusal.notFound("vehicle.not-found"));
    }

    List<Fact> facts(UUID vehicleId) {
        List<Fact> facts = new ArrayList<>();
        for (Entry entry : journal.entriesOf(vehicleId)) {
            fact(entry).ifPresent(facts::add);
        }
        return facts;
    }

    /** The fact of a journal entry; empty for an entry of another kind. */
    public Optional<Fact> fact(Entry entry) {
        Class<? extends Fact> kind = FactKinds.named(entry.kind());
        if (kind == null) {
            return Optional.empty();
        }
        ObjectNode node = ((ObjectNode) entry.record()).deepCopy();
        JsonNode stamp = json.tree(
                new Stamp(entry.id(), entry.chain(), entry.seq(), entry.effectiveAt(), entry.recordedAt(), entry.by()));
        node.set("stamp", stamp);
        return Optional.of(json.read(node, kind));
    }

    /**
     * The ids of the revisions that a car's state may rest on: those that were flashed, and on a car of unknown past those
     * that its ECU may show (rule 10).
     */
    Set<UUID> revisionsOf(Registration registration, List<Fact> facts) {
        Set<UUID> ids = new HashSet<>();
        Set<Reading> readings = new HashSet<>();
        for (Fact fact : facts) {
            if (fact instanceof Fact.Flashed flash && flash.calibrationId() != null) {
                ids.add(flash.calibrationId());
            } else if (fact instanceof Fact.ReadBack readBack && registration.baseline() == Baseline.UNKNOWN) {
                readings.add(readBack.reading());
            }
        }
        readings.forEach(reading -> ids.addAll(calibrations.idsShownBy(reading)));
        return ids;
    }

    CarRecord record(Registration registration, List<Fact> facts, Collection<UUID> revisionIds) {
        List<Revision> revisions = calibrations.revisions(revisionIds);
        Set<UUID> parts = new HashSet<>();
        facts.forEach(fact -> parts.addAll(partsNamedBy(fact)));
        return new CarRecord(registration, facts, revisions, catalog.effectGroups(), catalog.corrections(parts));
    }

    static List<UUID> partsNamedBy(Fact fact) {
        List<UUID> parts = new ArrayList<>();
        if (fact instanceof Fact.PartChanged change && change.partSpecId() != null) {
            parts.add(change.partSpecId());
        } else if (fact instanceof Fact.Inspected inspection) {
            for (Fact.Inspected.Line line : inspection.lines()) {
                if (line.partSpecId() != null) {
                    parts.add(line.partSpecId());
                }
            }
        }
        return parts;
    }

    /** Cars whose record names the part; not all of them carry it now. */
    public List<UUID> vehiclesNamingPart(UUID partSpecId) {
        return all(rows.carsOnWhichThePartWasChanged(partSpecId), rows.carsOnWhichThePartWasFound(partSpecId));
    }

    /** Cars whose record names the category. */
    public List<UUID> vehiclesNamingCategory(Category category) {
        return all(
                rows.carsOnWhichTheCategoryWasChanged(category.name()),
                rows.carsOnWhichTheCategoryWasFound(category.name()));
    }

    /** Cars that the revision was flashed into or whose ECU reported what it reports; not all of them run it now. */
    public List<UUID> vehiclesNamingRevision(Revision revision) {
        Reading reading = revision.reading();
        return all(
                rows.carsFlashedWith(revision.id()),
                all(rows.carsReporting(reading.calid(), reading.cvn()), rows.carsReadOutAs(reading.fileSha256())));
    }

    /** Each once, in the order in which several cars are locked. */
    private static List<UUID> all(Collection<UUID> some, Collection<UUID> others) {
        return Stream.concat(some.stream(), others.stream()).distinct().sorted().toList();
    }
}
