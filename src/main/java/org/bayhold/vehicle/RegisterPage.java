package org.bayhold.vehicle;

import java.util.Objects;
import java.util.Optional;
import org.bayhold.identity.Act;
import org.bayhold.identity.Call;
import org.bayhold.identity.Needs;
import org.bayhold.journal.Text;
import org.bayhold.page.Form;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;

/** Registering a car: first its VIN, typed or scanned, then the rest. */
@Controller
class RegisterPage {
    private static final String VIEW = "vehicle/register";

    private final VehicleWrites writes;
    private final VehicleRows rows;

    RegisterPage(VehicleWrites writes, VehicleRows rows) {
        this.writes = writes;
        this.rows = rows;
    }

    /** A VIN that is on record already leads to its car: a scanner asks by pressing Enter. */
    @Needs(Act.RECORD_ON_CAR)
    @GetMapping("/cars/new")
    ModelAndView form(Form form, @RequestParam @Nullable String vin) {
        String asked = Text.upper(vin);
        Optional<VehicleRow> known = asked == null ? Optional.empty() : rows.findByVin(asked);
        return known.map(row -> form.done("/cars/" + row.getId(), "register.known"))
                .orElseGet(() -> filled(form.show(VIEW), vin != null));
    }

    @Needs(Act.RECORD_ON_CAR)
    @PostMapping("/cars/new")
    ModelAndView register(Call call, Form form) {
        ModelAndView next = form.submit(VIEW, () -> {
            Baseline baseline = form.choice("baseline", Baseline.class);
            VehicleRequest request = new VehicleRequest(
                    form.text("vin"),
                    form.text("frameNumber"),
                    form.required("description"),
                    form.text("engine"),
                    form.integer("displacementCc"),
                    form.integer("cylinders"),
                    form.required("ecuHardware"),
                    form.text("plate"),
                    form.integer("odometerKm"),
                    new VehicleRequest.CustomerRequest(
                            form.required("customer.name"), form.text("customer.phone"), form.text("customer.email")),
                    // an answer left out is the careful one; the form asks for it
                    Objects.requireNonNullElse(baseline, Baseline.UNKNOWN),
                    form.text("factoryCalid"),
                    form.text("factoryCvn"));
            form.required("baseline");
            form.check(request);
            VehicleView car = writes.register(call, request).value();
            car.warnings().forEach(warning -> form.say("register.warning." + warning));
            return form.done("/cars/" + car.id(), "register.done");
        });
        return Form.leadsOn(next) ? next : filled(next, true);
    }

    private static ModelAndView filled(ModelAndView page, boolean asked) {
        return page.addObject("asked", asked).addObject("baselines", Baseline.values());
    }
}
