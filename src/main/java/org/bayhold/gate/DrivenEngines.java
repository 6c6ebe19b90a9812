package org.bayhold.gate;

import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.UUID;
import org.bayhold.buildsheet.AsOf;
import org.bayhold.buildsheet.CarRecord;
import org.bayhold.buildsheet.CarRecords;
import org.bayhold.buildsheet.CarState;
import org.bayhold.buildsheet.Coverage;
import org.bayhold.buildsheet.Fact;
import org.bayhold.buildsheet.InEcu;
import org.bayhold.calibration.Purpose;
import org.bayhold.calibration.Revision;
import org.bayhold.drivelog.EngineFacts;
import org.bayhold.drivelog.EngineFacts.ExpectedScale;
import org.bayhold.drivelog.EngineFacts.Injectors;
import org.bayhold.drivelog.Thresholds;
import org.bayhold.drives.EngineOnRecord;
import org.bayhold.prediction.Build;
import org.bayhold.prediction.OnTheCar;
import org.bayhold.prediction.Prediction;
import org.bayhold.vehicle.Vehicles;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/** The engine of a car as it was driven: its parts, what its calibration asks for, and what its mismatches lead one to expect. */
@Component
class DrivenEngines implements EngineOnRecord {
    private final CarRecords records;
    private final PolicyBook policyBook;
    private final Predicting predicting;
    private final Vehicles vehicles;
    private final Clock clock;

    DrivenEngines(CarRecords records, PolicyBook policyBook, Predicting predicting, Vehicles vehicles, Clock clock) {
        this.records = records;
        this.policyBook = policyBook;
        this.predicting = predicting;
        this.vehicles = vehicles;
        this.clock = clock;
    }

    @Override
    @Transactional(readOnly = true)
    public Driven driven(UUID vehicleId, @Nullable Instant effectiveAt) {
        CarRecord record = records.of(vehicleId);
        AsOf asOf = AsOf.of(record, clock, effectiveAt, null);
        CarState car = record.at(asOf.effectiveAt(), asOf.knownAt());
        Optional<Revision> revision = car.revision();
        Policy policy = policyBook.policies().at(asOf.knownAt(), asOf.knownAt());
        return new Driven(
                revision.map(Revision::id).orElse(null),
                revision.map(Revision::maps).orElse(List.of()).stream()
                        .filter(map -> !map.name().isEmpty())
                        .toList(),
                revision.filter(Revision::compressionIgnition).isEmpty(),
                engine(car, revision, record),
                thresholds(policy, revision));
    }

    /** An engine that is run in must not be driven at full load: nothing of it is asked for. docs/drive-log.md, D17. */
    private static Thresholds thresholds(Policy policy, Optional<Revision> revision) {
        Thresholds usual = policy.thresholds();
        return revision.filter(known -> known.purpose() == Purpose.RUN_IN).isPresent()
                ? usual.withoutFullLoad()
                : usual;
    }

    private EngineFacts engine(CarState car, Optional<Revision> revision, CarRecord record) {
        UUID vehicleId = car.registration().vehicleId();
        List<Coverage.Gap> gaps = Coverage.gaps(car, revision, record.groups());
        Build build = predicting.build(car, revision, gaps);
        OptionalDouble ceiling = OnTheCar.airflowCeilingGPerS(build);
        return new EngineFacts(
                vehicles.displacementCc(vehicleId).map(Integer::doubleValue).orElse(null),
                build.boostTargetKpa() == null || build.boostTargetKpa() <= 0 ? null : build.boostTargetKpa(),
                ceiling.isPresent() ? ceiling.getAsDouble() : null,
                OnTheCar.injection(build)
                        .map(on -> new Injectors(
                                on.count(), on.flowCcPerMin(), on.densityKgPerLitre(), on.stoichiometricRatio()))
                        .orElse(null),
                OnTheCar.trimAuthorityPercent(build),
                lastFlash(car, record).map(Fact.Flashed::adaptationsReset).orElse(null),
                gaps.isEmpty()
                        ? null
                        : Predicting.predicted(build)
                                .map(Prediction::mixture)
                                .map(DrivenEngines::expected)
                                .orElse(null));
    }

    /** With its band; one that is not known is none. */
    private static ExpectedScale expected(Prediction.Mixture mixture) {
        double demand = mixture.trimDemandPercent();
        double low = mixture.lambdaLow() == null ? demand : (mixture.lambdaLow() - 1) * 100;
        double high = mixture.lambdaHigh() == null ? demand : (mixture.lambdaHigh() - 1) * 100;
        return new ExpectedScale(demand, Math.min(low, demand), Math.max(high, demand));
    }

    private static Optional<Fact.Flashed> lastFlash(CarState car, CarRecord record) {
        return car.inEcu() instanceof InEcu.Flashed in
                ? record.facts().stream()
                        .filter(fact -> fact.stamp().id().equals(in.recordId()))
                        .map(Fact.Flashed.class::cast)
                        .findFirst()
                : Optional.empty();
    }
}
