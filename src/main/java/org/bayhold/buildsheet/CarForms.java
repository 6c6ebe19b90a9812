package org.bayhold.buildsheet;

import jakarta.servlet.http.HttpServletResponse;
import java.util.List;
import java.util.UUID;
import org.bayhold.form.Forms;
import org.bayhold.form.Typed;
import org.bayhold.identity.Call;
import org.bayhold.identity.Caller;
import org.bayhold.identity.Signatures;
import org.bayhold.refusal.Code;
import org.bayhold.refusal.Refusal;
import org.bayhold.vehicle.Vehicles;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.springframework.ui.Model;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** What the forms about one car have in common. */
@Component
class CarForms {
    private final Vehicles vehicles;
    private final Forms forms;
    private final Moments moments;
    private final Signatures signatures;

    CarForms(Vehicles vehicles, Forms forms, Moments moments, Signatures signatures) {
        this.vehicles = vehicles;
        this.forms = forms;
        this.moments = moments;
        this.signatures = signatures;
    }

    Typed read() {
        return forms.read();
    }

    /** The same call, signed by its caller with their password. */
    Call signed(Call call, @Nullable String password) {
        return signatures.signed(call, password);
    }

    @Nullable String owner(Caller caller, UUID vehicleId) {
        return vehicles.view(vehicleId, caller)
                .map(car -> car.customer().name())
                .orElse(null);
    }

    /** The page's car, and what the page was filled with. */
    void show(Model model, Caller caller, UUID vehicleId, Object form) {
        model.addAttribute(
                "car", vehicles.view(vehicleId, caller).orElseThrow(() -> Refusal.notFound("vehicle.not-found")));
        model.addAttribute("form", form);
        model.addAttribute("ties", List.of());
        Forms.fresh(model);
    }

    /** When it happened; the facts of the same minute are given to the page, which asks about them. */
    Moments.Moment moment(Typed typed, Model model, UUID vehicleId, @Nullable String when, @Nullable String order) {
        Moments.Moment moment = moments.of(typed, vehicleId, when == null ? "" : when, order == null ? "" : order);
        model.addAttribute("ties", moment.ties());
        return moment;
    }

    /** Shows the form again with what is wrong; what a form cannot mend goes on. */
    String again(Refusal refusal, Model model, HttpServletResponse response, String view) {
        if (refusal.code() == Code.NOT_FOUND || refusal.code() == Code.FORBIDDEN) {
            throw refusal;
        }
        forms.refuse(refusal, model, response);
        return view;
    }

    /** Back to the car, which tells what was done. */
    static String toCar(UUID vehicleId, RedirectAttributes redirect, String said, Object... arguments) {
        redirect.addFlashAttribute("said", said);
        redirect.addFlashAttribute("saidOf", arguments);
        return "redirect:/cars/" + vehicleId;
    }
}
