package org.bayhold.vehicle;

import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.bayhold.journal.AppendOnly;
import org.bayhold.journal.Personal;
import org.bayhold.obd.Reading;
import org.jspecify.annotations.Nullable;

/** One car as it is now; how it came to be so stands in its chain. */
@Entity
@Table(name = "vehicle")
@SuppressWarnings("UnusedVariable") // columns that only the database reads
class VehicleRow extends AppendOnly<UUID> {
    @Id
    private UUID id;

    private @Nullable String vin;
    private @Nullable String frameNumber;
    private String description;
    private @Nullable String engine;
    private @Nullable Integer displacementCc;
    private @Nullable Integer cylinders;

    @Enumerated(EnumType.STRING)
    private Baseline baseline;

    private String registeredEcu;
    private String ecuHardware;
    private @Nullable String factoryCalid;
    private @Nullable String factoryCvn;
    private @Nullable Integer registeredKm;
    private @Nullable Integer odometerKm;
    private @Nullable UUID plateId;
    private @Nullable UUID ownerNameId;
    private @Nullable UUID ownerPhoneId;
    private @Nullable UUID ownerEmailId;
    private @Nullable Instant plateSince;
    private @Nullable Instant ownerSince;
    private @Nullable Instant engineSince;
    private @Nullable Instant displacementSince;
    private @Nullable Instant cylindersSince;
    private boolean inShop = true;
    private @Nullable Instant staySince;
    private long version;
    private Instant registeredAt;

    @SuppressWarnings("NullAway.Init") // Hibernate fills it
    protected VehicleRow() {}

    VehicleRow(UUID id, VehicleRegistered registered, long version, Instant registeredAt) {
        this.id = id;
        this.vin = registered.vin();
        this.frameNumber = registered.frameNumber();
        this.description = registered.description();
        this.engine = registered.engine();
        this.displacementCc = registered.displacementCc();
        this.cylinders = registered.cylinders();
        this.baseline = registered.baseline();
        this.registeredEcu = registered.ecuHardware();
        this.ecuHardware = registered.ecuHardware();
        this.factoryCalid = registered.factoryCalid();
        this.factoryCvn = registered.factoryCvn();
        this.registeredKm = registered.odometerKm();
        this.odometerKm = registered.odometerKm();
        this.plateId = id(registered.plate());
        this.ownerNameId = id(registered.owner().name());
        this.ownerPhoneId = id(registered.owner().phone());
        this.ownerEmailId = id(registered.owner().email());
        this.version = version;
        this.registeredAt = registeredAt;
    }

    /** Takes over what an amendment says, each part unless a newer one is here already; what it leaves out stays. */
    void amend(VehicleAmended amended, long version, Instant at) {
        this.version = version;
        if (amended.namesPlate() && !isLate(at, plateSince)) {
            this.plateId = id(amended.plate());
            this.plateSince = at;
        }
        Owner owner = amended.owner();
        if (owner != null && !isLate(at, ownerSince)) {
            this.ownerNameId = id(owner.name());
            this.ownerPhoneId = id(owner.phone());
            this.ownerEmailId = id(owner.email());
            this.ownerSince = at;
        }
        if (amended.engine() != null && !isLate(at, engineSince)) {
            this.engine = amended.engine();
            this.engineSince = at;
        }
        if (amended.displacementCc() != null && !isLate(at, displacementSince)) {
            this.displacementCc = amended.displacementCc();
            this.displacementSince = at;
        }
        if (amended.cylinders() != null && !isLate(at, cylindersSince)) {
            this.cylinders = amended.cylinders();
            this.cylindersSince = at;
        }
    }

    /** What was registered holds from the beginning of time; amendments of equal time stand as they were recorded. */
    static boolean isLate(Instant at, @Nullable Instant since) {
        return since != null && at.isBefore(since);
    }

    private static @Nullable UUID id(@Nullable Personal personal) {
        return personal == null ? null : personal.id();
    }

    @Override
    public UUID getId() {
        return id;
    }

    Registration registration() {
        return new Registration(id, baseline, registeredEcu, new Reading(factoryCalid, factoryCvn, null), registeredAt);
    }

    @Nullable String vin() {
        return vin;
    }

    @Nullable String frameNumber() {
        return frameNumber;
    }

    String description() {
        return description;
    }

    @Nullable String engine() {
        return engine;
    }

    @Nullable Integer displacementCc() {
        return displacementCc;
    }

    @Nullable Integer cylinders() {
        return cylinders;
    }

    Baseline baseline() {
        return baseline;
    }

    String ecuHardware() {
        return ecuHardware;
    }

    @Nullable String factoryCalid() {
        return factoryCalid;
    }

    @Nullable String factoryCvn() {
        return factoryCvn;
    }

    @Nullable Integer registeredKm() {
        return registeredKm;
    }

    @Nullable Integer odometerKm() {
        return odometerKm;
    }

    @Nullable UUID plateId() {
        return plateId;
    }

    @Nullable UUID ownerNameId() {
        return ownerNameId;
    }

    @Nullable UUID ownerPhoneId() {
        return ownerPhoneId;
    }

    @Nullable UUID ownerEmailId() {
        return ownerEmailId;
    }

    boolean inShop() {
        return inShop;
    }

    @Nullable Instant staySince() {
        return staySince;
    }

    long version() {
        return version;
    }

    Instant registeredAt() {
        return registeredAt;
    }
}
