package org.bayhold.vehicle;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.bayhold.identity.Call;
import org.bayhold.journal.ChainKind;
import org.bayhold.journal.Ids;
import org.bayhold.journal.OpenChain;
import org.bayhold.journal.Text;
import org.bayhold.journal.WriteTemplate;
import org.bayhold.journal.Written;
import org.bayhold.refusal.Code;
import org.bayhold.refusal.Refusal;
import org.jspecify.annotations.Nullable;
import org.springframework.beans.factory.ObjectProvider;
import org.springframework.stereotype.Component;

/** Registering cars and amending what is known of them. */
@Component
class VehicleWrites {
    static final String REGISTERED = "VEHICLE_REGISTERED";
    static final String AMENDED = "VEHICLE_AMENDED";

    private final VehicleRows rows;
    private final Vehicles vehicles;
    private final WriteTemplate writes;
    private final ObjectProvider<AfterRegistration> after;

    VehicleWrites(VehicleRows rows, Vehicles vehicles, WriteTemplate writes, ObjectProvider<AfterRegistration> after) {
        this.rows = rows;
        this.vehicles = vehicles;
        this.writes = writes;
        this.after = after;
    }

    Written<VehicleView> register(Call call, VehicleRequest request) {
        List<String> warnings = new ArrayList<>();
        String vin = vin(request.vin(), warnings);
        String frameNumber = Text.strip(request.frameNumber());
        if (vin == null && frameNumber == null) {
            throw Refusal.invalid("vin", "vehicle.unnamed");
        }
        if ((request.factoryCalid() == null) != (request.factoryCvn() == null)) {
            throw Refusal.invalid("factoryCvn", "vehicle.calid-and-cvn");
        }
        UUID id = Ids.next();
        return writes.begin(call.request(), id, ChainKind.VEHICLE, VehicleView.class, chain -> {
            refuseDuplicates(vin, frameNumber);
            VehicleRegistered registered = new VehicleRegistered(
                    vin,
                    frameNumber,
                    request.description().strip(),
                    Text.strip(request.engine()),
                    request.displacementCc(),
                    request.cylinders(),
                    request.ecuHardware().strip(),
                    request.baseline(),
                    Text.strip(request.factoryCalid()),
                    Text.upper(request.factoryCvn()),
                    request.odometerKm(),
                    chain.keep(Text.strip(request.plate())),
                    owner(chain, request.customer()));
            Instant at = chain.recordedAt();
            VehicleRow row = new VehicleRow(id, registered, chain.nextSeq(), at);
            chain.append(REGISTERED, id, at, registered);
            rows.saveAndFlush(row);
            after.forEach(next -> next.registered(chain, row.registration()));
            return vehicles.view(row, call.caller(), warnings);
        });
    }

    Written<VehicleView> amend(Call call, UUID vehicleId, Optional<Long> ifMatch, VehiclePatch patch) {
        return writes.write(call.request(), vehicleId, VehicleView.class, chain -> {
            VehicleRow row = rows.findById(vehicleId).orElseThrow(() -> Refusal.notFound("vehicle.not-found"));
            if (ifMatch.isPresent() && ifMatch.get() != row.version()) {
                throw Refusal.of(Code.STALE, "problem.stale");
            }
            String plate = Text.strip(patch.plate());
            VehicleAmended amended = new VehicleAmended(
                    chain.keep(plate),
                    patch.plate() != null && plate == null,
                    patch.customer() == null ? null : owner(chain, patch.customer()),
                    Text.strip(patch.engine()),
                    patch.displacementCc(),
                    patch.cylinders());
            Instant effectiveAt = chain.effectiveAt(patch.effectiveAt());
            row.amend(amended, chain.nextSeq(), effectiveAt);
            chain.append(AMENDED, Ids.next(), effectiveAt, amended);
            return vehicles.view(row, call.caller(), List.of());
        });
    }

    private static @Nullable String vin(@Nullable String typed, List<String> warnings) {
        String text = Text.strip(typed);
        if (text == null) {
            return null;
        }
        Vin.Parsed parsed = Vin.parse(text);
        if (parsed instanceof Vin.Valid valid) {
            valid.warnings().forEach(warning -> warnings.add(warning.name()));
            return valid.vin().value();
        }
        Vin.Reason reason = ((Vin.Invalid) parsed).reason();
        throw Refusal.invalid("vin", "vin." + reason.name().toLowerCase(java.util.Locale.ROOT));
    }

    private void refuseDuplicates(@Nullable String vin, @Nullable String frameNumber) {
        if (vin != null && rows.findByVin(vin).isPresent()) {
            throw Refusal.conflict("vin", "vehicle.vin-exists", vin);
        }
        if (frameNumber != null && rows.existsByFrameNumber(frameNumber)) {
            throw Refusal.conflict("frameNumber", "vehicle.frame-number-exists", frameNumber);
        }
    }

    private static Owner owner(OpenChain chain, VehicleRequest.CustomerRequest customer) {
        return new Owner(
                chain.keepText(customer.name().strip()),
                chain.keep(Text.strip(customer.phone())),
                chain.keep(Text.strip(customer.email())));
    }
}
