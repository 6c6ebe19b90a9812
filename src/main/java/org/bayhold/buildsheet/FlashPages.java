package org.bayhold.buildsheet;

import jakarta.servlet.http.HttpServletResponse;
import java.time.Clock;
import java.util.Comparator;
import java.util.List;
import java.util.UUID;
import org.bayhold.calibration.Calibrations;
import org.bayhold.calibration.Revision;
import org.bayhold.form.Typed;
import org.bayhold.identity.Act;
import org.bayhold.identity.Call;
import org.bayhold.identity.Caller;
import org.bayhold.identity.Needs;
import org.bayhold.refusal.Refusal;
import org.springframework.stereotype.Controller;
import org.springframework.ui.Model;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.servlet.mvc.support.RedirectAttributes;

/** <i>Flash</i>: which file was written to the ECU, and whether it went well. */
@Controller
class FlashPages {
    private static final String VIEW = "buildsheet/flash";

    private final CarForms carForms;
    private final RecordFacts facts;
    private final FlashRecorder flashes;
    private final CarRecords records;
    private final Calibrations calibrations;
    private final Clock clock;

    FlashPages(
            CarForms carForms,
            RecordFacts facts,
            FlashRecorder flashes,
            CarRecords records,
            Calibrations calibrations,
            Clock clock) {
        this.carForms = carForms;
        this.facts = facts;
        this.flashes = flashes;
        this.records = records;
        this.calibrations = calibrations;
        this.clock = clock;
    }

    /** A revision for this car's ECU hardware. */
    record Choice(Revision revision, boolean covers) {}

    @Needs(Act.FLASH_AND_READ_BACK)
    @GetMapping("/cars/{id}/flash")
    String form(Caller caller, @PathVariable UUID id, Model model) {
        return show(caller, id, FlashForm.EMPTY, model);
    }

    @Needs(Act.FLASH_AND_READ_BACK)
    @PostMapping("/cars/{id}/flash")
    String record(
            Call call,
            @PathVariable UUID id,
            @ModelAttribute FlashForm form,
            Model model,
            HttpServletResponse response,
            RedirectAttributes redirect) {
        show(call.caller(), id, form, model);
        try {
            FlashRequest request = read(id, form, model);
            FlashView flash = facts.record(call, id, flashes, request).value();
            return CarForms.toCar(id, redirect, "said.flash." + flash.outcome());
        } catch (Refusal refusal) {
            return carForms.again(named(refusal), model, response, VIEW);
        }
    }

    private FlashRequest read(UUID id, FlashForm form, Model model) {
        Typed typed = carForms.read();
        String calibration = typed.needed("calibration", form.calibration());
        boolean ours = !calibration.equals(FlashForm.NOT_OURS);
        FlashRequest request = new FlashRequest(
                ours ? typed.id("calibration", calibration) : null,
                typed.choice("outcome", form.outcome(), Fact.Outcome.class, Fact.Outcome.COMPLETED),
                typed.choice("source", form.source(), Fact.Source.class, Fact.Source.SHOP),
                form.adaptationsReset() == null ? null : Boolean.TRUE,
                carForms.moment(typed, model, id, form.when(), form.order()).at(),
                typed.whole("odometerKm", form.odometerKm()),
                typed.text("performedBy", form.performedBy()),
                typed.text("note", form.note()));
        typed.check(request, "");
        typed.done();
        return request;
    }

    private static Refusal named(Refusal refusal) {
        return new Refusal(
                refusal.code(),
                refusal.reasons().stream()
                        .map(reason -> new Refusal.Reason(
                                "calibrationId".equals(reason.field())
                                        ? "calibration"
                                        : "effectiveAt".equals(reason.field()) ? "when" : reason.field(),
                                reason.key(),
                                reason.arguments()))
                        .toList());
    }

    private String show(Caller caller, UUID id, FlashForm form, Model model) {
        carForms.show(model, caller, id, form);
        List<Choice> choices = choices(id);
        model.addAttribute("choices", choices);
        // what covers the car and is the newest is what is usually flashed; anything else is chosen by hand
        model.addAttribute(
                "chosen",
                form.calibration() != null
                        ? form.calibration()
                        : choices.stream()
                                .filter(Choice::covers)
                                .map(choice -> choice.revision().id().toString())
                                .findFirst()
                                .orElse(""));
        return VIEW;
    }

    /** What is in force for the car's ECU hardware: first what covers the build sheet, then the newest. */
    private List<Choice> choices(UUID id) {
        CarRecord record = records.of(id);
        AsOf now = AsOf.of(record, clock, null, null);
        CarState car = record.at(now.effectiveAt(), now.knownAt());
        return calibrations.issuedFor(car.ecuHardware()).stream()
                .filter(revision -> revision.withdrawnAt() == null)
                .map(revision -> new Choice(
                        revision, Coverage.gaps(car, revision, record.groups()).isEmpty()))
                .sorted(Comparator.comparing((Choice choice) -> !choice.covers()))
                .toList();
    }
}
