package org.bayhold.buildsheet;

import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import org.bayhold.journal.CanonicalJson;
import org.bayhold.journal.OpenChain;
import org.bayhold.journal.WriteRequest;
import org.bayhold.journal.WriteTemplate;
import org.bayhold.journal.Written;
import org.bayhold.refusal.Refusal;
import org.bayhold.vehicle.Registration;
import org.bayhold.vehicle.Vehicles;
import org.springframework.stereotype.Component;

/** Writing to a car: the write template with the car's record read under the lock. */
@Component
public class CarWrites {
    private final WriteTemplate writes;
    private final CarRecords records;
    private final FactRows rows;
    private final CanonicalJson json;
    private final Vehicles vehicles;

    CarWrites(WriteTemplate writes, CarRecords records, FactRows rows, CanonicalJson json, Vehicles vehicles) {
        this.writes = writes;
        this.records = records;
        this.rows = rows;
        this.json = json;
        this.vehicles = vehicles;
    }

    /**
     * One write to one car, as {@link WriteTemplate#write}.
     *
     * @param cites revisions that the request names, beyond those that the car's record rests on
     */
    public <T> Written<T> write(
            WriteRequest request, UUID vehicleId, Collection<UUID> cites, Class<T> type, Function<OpenCar, T> work) {
        return writes.write(request, vehicleId, type, chain -> {
            OpenCar car = open(chain, cites);
            T answer = work.apply(car);
            // what follows from a car's facts stands in columns too, to be listed and searched
            CarState now = car.now();
            CarState.Stay stay = now.stay();
            Integer odometerKm = Odometer.last(car.record().facts());
            vehicles.now(vehicleId, now.ecuHardware(), odometerKm, stay.inShop(), stay.since());
            return answer;
        });
    }

    /** As {@link WriteTemplate#answered}. */
    public <T> Optional<T> answered(WriteRequest request, Class<T> type) {
        return writes.answered(request, type);
    }

    /** The car is locked already: what it rests on is locked next, then the clock is read, then the catalogue. */
    private OpenCar open(OpenChain chain, Collection<UUID> cites) {
        Registration registration = records.registration(chain.chainId());
        List<Fact> facts = records.facts(chain.chainId());
        Set<UUID> revisions = new HashSet<>(records.revisionsOf(registration, facts));
        revisions.addAll(cites);
        chain.hold(revisions);
        return new OpenCar(chain, records.record(registration, facts, revisions), rows, json);
    }

    /**
     * One fact of a car, as it stands in its chain.
     *
     * @throws Refusal NOT_FOUND where the chain is no car's; CONFLICT where the record is no fact of it
     */
    Fact fact(UUID vehicleId, UUID recordId) {
        Registration ignored = records.registration(vehicleId);
        return records.facts(vehicleId).stream()
                .filter(fact -> fact.stamp().id().equals(recordId))
                .findFirst()
                .orElseThrow(() -> Refusal.conflict("id", "voiding.not-voidable"));
    }

    /** A car that is being registered in the same write: nothing has happened to it yet. */
    public OpenCar adopt(OpenChain chain, Registration registration) {
        return new OpenCar(chain, records.record(registration, List.of(), List.of()), rows, json);
    }
}
