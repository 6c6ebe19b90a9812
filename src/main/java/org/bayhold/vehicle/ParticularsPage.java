package org.bayhold.vehicle;

import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import org.bayhold.identity.Act;
import org.bayhold.identity.Call;
import org.bayhold.identity.Caller;
import org.bayhold.identity.Needs;
import org.bayhold.identity.People;
import org.bayhold.journal.Entry;
import org.bayhold.journal.Journal;
import org.bayhold.page.Form;
import org.bayhold.refusal.Code;
import org.bayhold.refusal.Refusal;
import org.jspecify.annotations.Nullable;
import org.springframework.http.HttpStatus;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.servlet.ModelAndView;

/** <i>Particulars</i>: another plate, another owner, what the engine is. What nobody touched is not said again. */
@Controller
class ParticularsPage {
    private static final String VIEW = "vehicle/particulars";

    private final VehicleWrites writes;
    private final Vehicles vehicles;
    private final Journal journal;
    private final People people;

    ParticularsPage(VehicleWrites writes, Vehicles vehicles, Journal journal, People people) {
        this.writes = writes;
        this.vehicles = vehicles;
        this.journal = journal;
        this.people = people;
    }

    @Needs(Act.RECORD_ON_CAR)
    @GetMapping("/cars/{id}/particulars")
    ModelAndView form(Caller caller, @PathVariable UUID id, Form form) {
        return page(form.show(VIEW), caller, id, form);
    }

    @Needs(Act.RECORD_ON_CAR)
    @PostMapping("/cars/{id}/particulars")
    ModelAndView amend(Call call, @PathVariable UUID id, Form form) {
        ModelAndView page = form.submit(VIEW, () -> {
            Integer version = form.integer("version");
            VehiclePatch patch = patch(form, car(call.caller(), id), call.caller());
            form.check(patch);
            try {
                VehicleView car = writes.amend(
                                call, id, Optional.of(version == null ? -1L : version.longValue()), patch)
                        .value();
                return form.done("/cars/" + car.id(), "particulars.done");
            } catch (Refusal refusal) {
                throw refusal.code() == Code.STALE
                        ? Refusal.of(Code.STALE, "particulars.stale")
                        : refusal.renamed(field -> field.equals("effectiveAt") ? "when" : field);
            }
        });
        if (page.getStatus() == HttpStatus.PRECONDITION_FAILED) {
            amendedLast(id)
                    .ifPresent(entry -> page.addObject("changed", entry)
                            .addObject(
                                    "by",
                                    people.names(java.util.List.of(entry.by())).get(entry.by())));
        }
        return page(page, call.caller(), id, form);
    }

    /** What differs from what is on record; who may not see the owner's contact data says nothing of the owner. */
    private static VehiclePatch patch(Form form, VehicleView car, Caller caller) {
        String plate = form.text("plate");
        VehicleRequest.CustomerRequest owner = caller.may(Act.SEE_CONTACTS)
                ? new VehicleRequest.CustomerRequest(
                        form.required("customer.name"), form.text("customer.phone"), form.text("customer.email"))
                : null;
        boolean sameOwner = owner == null
                || (owner.name().equals(car.customer().name())
                        && Objects.equals(owner.phone(), car.customer().phone())
                        && Objects.equals(owner.email(), car.customer().email()));
        VehiclePatch patch = new VehiclePatch(
                Objects.equals(plate, car.plate()) ? null : Objects.requireNonNullElse(plate, ""),
                sameOwner ? null : owner,
                changed(form.text("engine"), car.engine()),
                changed(form.integer("displacementCc"), car.displacementCc()),
                changed(form.integer("cylinders"), car.cylinders()),
                form.time("when"));
        boolean nothing = patch.plate() == null
                && patch.customer() == null
                && patch.engine() == null
                && patch.displacementCc() == null
                && patch.cylinders() == null;
        if (nothing && !form.isRefused()) {
            form.refused(Refusal.of(Code.INVALID, "particulars.nothing"));
        }
        return patch;
    }

    private static <T> @Nullable T changed(@Nullable T typed, @Nullable T onRecord) {
        return Objects.equals(typed, onRecord) ? null : typed;
    }

    private Optional<Entry> amendedLast(UUID id) {
        return journal.entriesOf(id).stream()
                .filter(entry -> entry.kind().equals(VehicleWrites.AMENDED))
                .reduce((earlier, later) -> later);
    }

    private VehicleView car(Caller caller, UUID id) {
        return vehicles.view(id, caller).orElseThrow(() -> Refusal.notFound("vehicle.not-found"));
    }

    private ModelAndView page(ModelAndView page, Caller caller, UUID id, Form form) {
        if (Form.leadsOn(page)) {
            return page;
        }
        VehicleView car = car(caller, id);
        form.with("plate", car.plate())
                .with("customer.name", car.customer().name())
                .with("customer.phone", car.customer().phone())
                .with("customer.email", car.customer().email())
                .with("engine", car.engine())
                .with("displacementCc", car.displacementCc())
                .with("cylinders", car.cylinders());
        return page.addObject("car", car);
    }
}
