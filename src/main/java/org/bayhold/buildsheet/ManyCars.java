package org.bayhold.buildsheet;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.bayhold.calibration.Calibrations;
import org.bayhold.calibration.Revision;
import org.bayhold.catalog.Catalog;
import org.bayhold.catalog.Correction;
import org.bayhold.catalog.EffectGroups;
import org.bayhold.journal.Snapshots;
import org.bayhold.obd.Reading;
import org.bayhold.vehicle.Baseline;
import org.bayhold.vehicle.KnownCar;
import org.bayhold.vehicle.KnownCars;
import org.springframework.stereotype.Component;

/** The records of many cars, a few hundred in a handful of questions; one car alone is read by {@link CarRecords}. */
@Component
public class ManyCars {
    /** Revisions that are kept at hand; the records of a shop name a few again and again. */
    private static final int KEPT = 2_000;

    private final KnownCars cars;
    private final FactColumns facts;
    private final Calibrations calibrations;
    private final Catalog catalog;
    private final Snapshots snapshots;

    ManyCars(KnownCars cars, FactColumns facts, Calibrations calibrations, Catalog catalog, Snapshots snapshots) {
        this.cars = cars;
        this.facts = facts;
        this.calibrations = calibrations;
        this.catalog = catalog;
        this.snapshots = snapshots;
    }

    /** Begins to read; everything is of the moment at which {@link Snapshots#read} began, which is called around it. */
    public Reader reader() {
        Map<UUID, List<Correction>> corrections =
                catalog.corrections().stream().collect(Collectors.groupingBy(Correction::partSpecId));
        return new Reader(catalog.effectGroups(), corrections);
    }

    /** Reads cars, some at a time. */
    public final class Reader {
        private final EffectGroups groups;
        private final Map<UUID, List<Correction>> corrections;
        private final Map<UUID, Revision> kept = new LinkedHashMap<>(16, 0.75f, true) {
            private static final long serialVersionUID = 1;

            @Override
            protected boolean removeEldestEntry(Map.Entry<UUID, Revision> eldest) {
                return size() > KEPT;
            }
        };

        private Reader(EffectGroups groups, Map<UUID, List<Correction>> corrections) {
            this.groups = groups;
            this.corrections = corrections;
        }

        /** The records of these cars, in the order of their ids; unknown ids are left out. */
        public List<KnownRecord> of(Collection<UUID> vehicleIds) {
            List<KnownCar> known = cars.of(vehicleIds);
            Map<UUID, List<Fact>> byCar = facts.of(vehicleIds);
            Map<UUID, Revision> revisions = revisions(known, byCar);
            List<KnownRecord> records = new ArrayList<>();
            for (KnownCar car : known) {
                List<Fact> its = byCar.getOrDefault(car.registration().vehicleId(), List.of());
                records.add(new KnownRecord(car, record(car, its, revisions)));
            }
            snapshots.forget();
            return records;
        }

        private Map<UUID, Revision> revisions(List<KnownCar> known, Map<UUID, List<Fact>> byCar) {
            Set<UUID> wanted = new HashSet<>();
            Set<Reading> shown = new HashSet<>();
            for (KnownCar car : known) {
                List<Fact> its = byCar.getOrDefault(car.registration().vehicleId(), List.of());
                wanted.addAll(flashed(its));
                shown.addAll(readings(car, its));
            }
            wanted.addAll(calibrations.idsShownByAny(shown));
            List<UUID> missing =
                    wanted.stream().filter(id -> !kept.containsKey(id)).toList();
            Map<UUID, Revision> revisions = new HashMap<>();
            calibrations.revisions(missing).forEach(revision -> revisions.put(revision.id(), revision));
            for (UUID id : wanted) {
                Revision revision = kept.get(id);
                if (revision != null) {
                    revisions.put(id, revision);
                }
            }
            kept.putAll(revisions);
            return revisions;
        }

        private CarRecord record(KnownCar car, List<Fact> its, Map<UUID, Revision> revisions) {
            Set<UUID> cited = flashed(its);
            Set<Reading> readings = readings(car, its);
            List<Revision> own = new ArrayList<>();
            cited.forEach(id -> Optional.ofNullable(revisions.get(id)).ifPresent(own::add));
            if (!readings.isEmpty()) {
                revisions.values().stream()
                        .filter(revision -> !cited.contains(revision.id()))
                        .filter(revision -> readings.stream().anyMatch(revision.reading()::shows))
                        .forEach(own::add);
            }
            List<Correction> corrected = corrections.isEmpty()
                    ? List.of()
                    : its.stream()
                            .flatMap(fact -> CarRecords.partsNamedBy(fact).stream())
                            .distinct()
                            .flatMap(part -> corrections.getOrDefault(part, List.of()).stream())
                            .toList();
            return new CarRecord(car.registration(), its, own, groups, corrected);
        }
    }

    private static Set<UUID> flashed(List<Fact> facts) {
        Set<UUID> ids = new HashSet<>();
        for (Fact fact : facts) {
            if (fact instanceof Fact.Flashed flash && flash.calibrationId() != null) {
                ids.add(flash.calibrationId());
            }
        }
        return ids;
    }

    /** Only on a car of unknown past may a reading tell which revision runs (rule 10). */
    private static Set<Reading> readings(KnownCar car, List<Fact> facts) {
        Set<Reading> readings = new HashSet<>();
        if (car.registration().baseline() == Baseline.UNKNOWN) {
            for (Fact fact : facts) {
                if (fact instanceof Fact.ReadBack check) {
                    readings.add(check.reading());
                }
            }
        }
        return readings;
    }
}
