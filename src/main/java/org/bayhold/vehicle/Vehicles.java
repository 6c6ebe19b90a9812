package org.bayhold.vehicle;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.bayhold.identity.Act;
import org.bayhold.identity.Caller;
import org.bayhold.journal.Page;
import org.bayhold.journal.PersonalData;
import org.bayhold.refusal.Refusal;
import org.jspecify.annotations.Nullable;
import org.springframework.data.domain.Limit;
import org.springframework.stereotype.Component;

/** Reading cars. */
@Component
public class Vehicles {
    private final VehicleRows rows;
    private final PersonalData personalData;

    Vehicles(VehicleRows rows, PersonalData personalData) {
        this.rows = rows;
        this.personalData = personalData;
    }

    public Optional<Registration> registration(UUID vehicleId) {
        return rows.findById(vehicleId).map(VehicleRow::registration);
    }

    /** How many cylinders a car has; empty where nobody recorded it. */
    public Optional<Integer> cylinders(UUID vehicleId) {
        return rows.findById(vehicleId).map(VehicleRow::cylinders);
    }

    /** Of all cylinders; empty where nobody recorded it. */
    public Optional<Integer> displacementCc(UUID vehicleId) {
        return rows.findById(vehicleId).map(VehicleRow::displacementCc);
    }

    /** The engine of a car, in words; empty where nobody recorded it. */
    public Optional<String> engine(UUID vehicleId) {
        return rows.findById(vehicleId).map(VehicleRow::engine);
    }

    /** A car as this caller may see it. */
    public Optional<VehicleView> view(UUID vehicleId, Caller caller) {
        return rows.findById(vehicleId).map(row -> view(row, caller, List.of()));
    }

    /** Cars as this caller may see them, by id. */
    public Map<UUID, VehicleView> views(Collection<UUID> vehicleIds, Caller caller) {
        Map<UUID, VehicleView> views = new HashMap<>();
        views(rows.findAllById(Set.copyOf(vehicleIds)), caller).forEach(view -> views.put(view.id(), view));
        return views;
    }

    /**
     * Keeps up what was folded of a car: its ECU hardware, the odometer where a new reading came, and its stay.
     *
     * @param staySince when it came in, or left
     */
    public void now(
            UUID vehicleId,
            String ecuHardware,
            @Nullable Integer odometerKm,
            boolean inShop,
            @Nullable Instant staySince) {
        if (rows.now(vehicleId, ecuHardware, odometerKm, inShop, staySince) == 0) {
            throw Refusal.notFound("vehicle.not-found");
        }
    }

    /** A car of the day's list. */
    public record Stay(VehicleView car, boolean inShop, Instant since) {}

    /** The cars in the shop; the last to come first. */
    public List<Stay> inShop(int atMost, Caller caller) {
        return stays(rows.inShop(Limit.of(atMost)), caller);
    }

    /** The cars that left at {@code since} or later and are still out; the last to leave first. */
    public List<Stay> leftSince(Instant since, int atMost, Caller caller) {
        return stays(rows.leftSince(since, Limit.of(atMost)), caller);
    }

    private List<Stay> stays(List<VehicleRow> found, Caller caller) {
        List<VehicleView> views = views(found, caller);
        List<Stay> stays = new ArrayList<>();
        for (int i = 0; i < found.size(); i++) {
            VehicleRow row = found.get(i);
            Instant at = row.staySince();
            stays.add(new Stay(views.get(i), row.inShop(), at == null ? row.registeredAt() : at));
        }
        return stays;
    }

    /** Cars whose VIN, frame number, description, plate or owner's name holds the text. */
    public List<VehicleView> search(String text, int atMost, Caller caller) {
        Optional<VehicleRow> exact = rows.findByVin(text.strip().toUpperCase(Locale.ROOT));
        return exact.isPresent()
                ? views(List.of(exact.get()), caller)
                : views(rows.find(Page.like(text), Page.after(null), atMost), caller);
    }

    /** The odometer reading at registration, in km. */
    public Optional<Integer> registeredOdometerKm(UUID vehicleId) {
        return rows.findById(vehicleId).map(VehicleRow::registeredKm);
    }

    VehicleView view(VehicleRow row, Caller caller, List<String> warnings) {
        return view(row, caller, warnings, personalData.readIds(personalIds(row)));
    }

    List<VehicleView> views(List<VehicleRow> found, Caller caller) {
        List<@Nullable UUID> ids = new ArrayList<>();
        found.forEach(row -> ids.addAll(personalIds(row)));
        PersonalData.Texts texts = personalData.readIds(ids);
        return found.stream().map(row -> view(row, caller, List.of(), texts)).toList();
    }

    private static List<@Nullable UUID> personalIds(VehicleRow row) {
        List<@Nullable UUID> ids = new ArrayList<>();
        ids.add(row.plateId());
        ids.add(row.ownerNameId());
        ids.add(row.ownerPhoneId());
        ids.add(row.ownerEmailId());
        return ids;
    }

    private static VehicleView view(VehicleRow row, Caller caller, List<String> warnings, PersonalData.Texts texts) {
        boolean contacts = caller.may(Act.SEE_CONTACTS);
        return new VehicleView(
                row.getId(),
                row.vin(),
                row.frameNumber(),
                row.description(),
                row.engine(),
                row.displacementCc(),
                row.cylinders(),
                row.ecuHardware(),
                row.baseline(),
                row.factoryCalid(),
                row.factoryCvn(),
                texts.of(row.plateId()),
                row.odometerKm(),
                new VehicleView.Customer(
                        texts.of(row.ownerNameId()),
                        contacts ? texts.of(row.ownerPhoneId()) : null,
                        contacts ? texts.of(row.ownerEmailId()) : null),
                row.registeredAt(),
                warnings,
                row.version());
    }
}
