package org.bayhold.buildsheet;

import java.time.Clock;
import java.util.Comparator;
import java.util.List;
import java.util.UUID;
import org.bayhold.calibration.Calibrations;
import org.bayhold.calibration.Revision;
import org.bayhold.identity.Act;
import org.bayhold.identity.Call;
import org.bayhold.identity.Caller;
import org.bayhold.identity.Needs;
import org.bayhold.page.Form;
import org.bayhold.refusal.Refusal;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.servlet.ModelAndView;

/** <i>Flash</i>: which file was written to the ECU, and whether it went well. */
@Controller
class FlashPages {
    private static final String VIEW = "buildsheet/flash";
    /** The answer of who flashed a file that is none of the shop's. */
    private static final String NOT_OURS = "not-ours";

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

    /** What covers the car and is the newest is what is usually flashed; anything else is chosen by hand. */
    @Needs(Act.FLASH_AND_READ_BACK)
    @GetMapping("/cars/{id}/flash")
    ModelAndView form(Caller caller, @PathVariable UUID id, Form form) {
        List<Choice> choices = choices(id);
        choices.stream()
                .filter(Choice::covers)
                .findFirst()
                .ifPresent(choice -> form.with("calibration", choice.revision().id()));
        Form filled = form.with("outcome", Fact.Outcome.COMPLETED).with("source", Fact.Source.SHOP);
        return page(filled.show(VIEW), caller, id, form);
    }

    @Needs(Act.FLASH_AND_READ_BACK)
    @PostMapping("/cars/{id}/flash")
    ModelAndView record(Call call, @PathVariable UUID id, Form form) {
        ModelAndView page = form.submit(VIEW, () -> {
            FlashRequest request = read(id, form);
            form.check(request);
            try {
                FlashView flash = facts.record(call, id, flashes, request).value();
                CarForms.warn(form, flash.warnings());
                return form.done(CarForms.path(id), "said.flash." + flash.outcome());
            } catch (Refusal refusal) {
                throw CarForms.named(refusal).renamed(field -> field.equals("calibrationId") ? "calibration" : field);
            }
        });
        return page(page, call.caller(), id, form);
    }

    private FlashRequest read(UUID id, Form form) {
        boolean ours = !form.required("calibration").equals(NOT_OURS);
        Fact.Outcome outcome = form.choice("outcome", Fact.Outcome.class);
        Fact.Source source = form.choice("source", Fact.Source.class);
        return new FlashRequest(
                ours ? form.id("calibration") : null,
                outcome == null ? Fact.Outcome.COMPLETED : outcome,
                source == null ? Fact.Source.SHOP : source,
                form.checked("adaptationsReset") ? Boolean.TRUE : null,
                carForms.moment(form, id),
                form.integer("odometerKm"),
                form.text("performedBy"),
                form.text("note"));
    }

    private ModelAndView page(ModelAndView page, Caller caller, UUID id, Form form) {
        return Form.leadsOn(page)
                ? page
                : carForms.of(page, caller, id, form)
                        .addObject("choices", choices(id))
                        .addObject("outcomes", Fact.Outcome.values())
                        .addObject("sources", Fact.Source.values())
                        .addObject("mayIssue", caller.may(Act.ISSUE_CALIBRATION));
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
