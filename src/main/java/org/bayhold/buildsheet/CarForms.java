package org.bayhold.buildsheet;

import java.time.Instant;
import java.util.Collection;
import java.util.UUID;
import org.bayhold.identity.Caller;
import org.bayhold.page.Form;
import org.bayhold.refusal.Refusal;
import org.bayhold.vehicle.VehicleView;
import org.bayhold.vehicle.Vehicles;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.springframework.web.servlet.ModelAndView;

/** What the forms about one car have in common. */
@Component
public class CarForms {
    private final Vehicles vehicles;
    private final Moments moments;

    CarForms(Vehicles vehicles, Moments moments) {
        this.vehicles = vehicles;
        this.moments = moments;
    }

    public VehicleView car(Caller caller, UUID vehicleId) {
        return vehicles.view(vehicleId, caller).orElseThrow(() -> Refusal.notFound("vehicle.not-found"));
    }

    public @Nullable Instant moment(Form form, UUID vehicleId) {
        return moments.at(form, vehicleId);
    }

    /** Gives a page its car; a page that leads on elsewhere needs none. */
    public ModelAndView of(ModelAndView page, Caller caller, UUID vehicleId, Form form) {
        if (Form.leadsOn(page)) {
            return page;
        }
        return page.addObject("car", car(caller, vehicleId)).addObject("ties", moments.ties(form, vehicleId));
    }

    /** What was recorded and looks odd is said on the page that follows, each oddity once. */
    public static void warn(Form form, Collection<String> warnings) {
        warnings.stream().distinct().forEach(warning -> form.say("warning." + warning));
    }

    /** The API's name of a time is the page's {@code when}. */
    public static Refusal named(Refusal refusal) {
        return refusal.renamed(field -> field.equals("effectiveAt") ? "when" : field);
    }

    public static String path(UUID vehicleId) {
        return "/cars/" + vehicleId;
    }
}
