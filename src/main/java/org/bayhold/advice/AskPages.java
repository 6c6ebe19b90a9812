package org.bayhold.advice;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.bayhold.advice.AdviceRequest.Proposed;
import org.bayhold.advice.Advising.Advised;
import org.bayhold.buildsheet.Fact.Action;
import org.bayhold.calibration.Calibrations;
import org.bayhold.catalog.Catalog;
import org.bayhold.catalog.Category;
import org.bayhold.gate.PredictionDetails;
import org.bayhold.gate.PredictionPages;
import org.bayhold.identity.Act;
import org.bayhold.identity.Call;
import org.bayhold.identity.Caller;
import org.bayhold.identity.Needs;
import org.bayhold.page.Form;
import org.bayhold.refusal.Refusal;
import org.bayhold.vehicle.VehicleView;
import org.bayhold.vehicle.Vehicles;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestMethod;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.servlet.ModelAndView;

/** <i>Ask</i>, for a telephone call: the car, the parts, and an answer that changes as they are added. Showing keeps nothing. */
@Controller
class AskPages {
    private static final String VIEW = "advice/ask";
    /** The page changes under somebody who goes on typing: the caret stays where it is. */
    private static final String IN_PLACE = "HX-Request";

    private static final int FOUND_CARS = 20;
    private static final int OFFERED_PARTS = 200;

    private final AskLines lines;
    private final Advising advising;
    private final AdviceWrites writes;
    private final Vehicles vehicles;
    private final Calibrations calibrations;
    private final Catalog catalog;
    private final PredictionPages predictions;

    AskPages(
            AskLines lines,
            Advising advising,
            AdviceWrites writes,
            Vehicles vehicles,
            Calibrations calibrations,
            Catalog catalog,
            PredictionPages predictions) {
        this.lines = lines;
        this.advising = advising;
        this.writes = writes;
        this.vehicles = vehicles;
        this.calibrations = calibrations;
        this.catalog = catalog;
        this.predictions = predictions;
    }

    @Needs(Act.ADVISE)
    @GetMapping("/ask")
    ModelAndView whichCar(Caller caller, @RequestParam(defaultValue = "") String car) {
        List<VehicleView> found = car.isBlank() ? List.of() : vehicles.search(car, FOUND_CARS, caller);
        return found.size() == 1
                ? new ModelAndView("redirect:/cars/" + found.get(0).id() + "/ask")
                : new ModelAndView("advice/ask-which-car", Map.of("typed", car, "found", found));
    }

    @Needs(Act.ADVISE)
    @RequestMapping(
            path = "/cars/{id}/ask",
            method = {RequestMethod.GET, RequestMethod.POST},
            params = "!keep")
    ModelAndView ask(
            Caller caller,
            @PathVariable UUID id,
            @RequestHeader(name = IN_PLACE, required = false) @Nullable String inPlace,
            Form form) {
        return shown(caller, car(caller, id), form).addObject("inPlace", inPlace != null);
    }

    /** Of a car that is not in the register. */
    @Needs(Act.ADVISE)
    @RequestMapping(
            path = "/ask/described",
            method = {RequestMethod.GET, RequestMethod.POST},
            params = "!keep")
    ModelAndView askDescribed(
            Caller caller, @RequestHeader(name = IN_PLACE, required = false) @Nullable String inPlace, Form form) {
        return shown(caller, null, form).addObject("inPlace", inPlace != null);
    }

    @Needs(Act.ADVISE)
    @PostMapping(path = "/cars/{id}/ask", params = "keep")
    ModelAndView keepOfCar(Call call, @PathVariable UUID id, Form form) {
        return kept(call, car(call.caller(), id), form);
    }

    @Needs(Act.ADVISE)
    @PostMapping(path = "/ask/described", params = "keep")
    ModelAndView keepDescribed(Call call, Form form) {
        return kept(call, null, form);
    }

    private VehicleView car(Caller caller, UUID id) {
        return vehicles.view(id, caller).orElseThrow(() -> Refusal.notFound("vehicle.not-found"));
    }

    private ModelAndView kept(Call call, @Nullable VehicleView car, Form form) {
        ModelAndView page = form.submit(VIEW, () -> {
            AdviceRequest question = question(car, form);
            form.check(question);
            return form.done("/answers/" + writes.answer(call, question), "said.answer-kept");
        });
        return Form.leadsOn(page) ? page : choices(page, car, form, null);
    }

    /** Nothing is refused here: what is still open is said beside its field, and the answer waits for it. */
    private ModelAndView shown(Caller caller, @Nullable VehicleView car, Form form) {
        Advised answer = null;
        try {
            AdviceRequest question = question(car, form);
            if (!form.isRefused() && isAsked(car, question)) {
                form.check(question);
                answer = advising.answer(question);
            }
        } catch (Refusal refusal) {
            form.refused(refusal);
        }
        PredictionDetails details = answer == null
                ? null
                : predictions.of(answer.build(), caller.units()).orElse(null);
        return choices(form.show(VIEW), car, form, answer == null ? null : answer.body())
                .addObject("details", details);
    }

    private static boolean isAsked(@Nullable VehicleView car, AdviceRequest question) {
        return (car != null || question.ecuHardware() != null)
                && (!question.changes().isEmpty() || question.calibrationId() != null);
    }

    private AdviceRequest question(@Nullable VehicleView car, Form form) {
        List<Proposed> proposed = lines.proposed(form);
        return new AdviceRequest(
                car == null ? null : car.id(),
                car == null ? form.text("ecuHardware") : null,
                car == null ? lines.fitted(form) : List.of(),
                proposed,
                form.id("calibrationId"),
                form.text("question"),
                form.text("askedBy"));
    }

    private ModelAndView choices(ModelAndView page, @Nullable VehicleView car, Form form, @Nullable AdviceBody answer) {
        String hardware = car == null ? form.value("ecuHardware").strip() : car.ecuHardware();
        Map<UUID, String> offered = new LinkedHashMap<>();
        calibrations
                .issuedFor(hardware)
                .forEach(revision -> offered.put(revision.id(), revision.name() + " " + revision.revision()));
        return page.addObject("car", car)
                .addObject("action", car == null ? "/ask/described" : "/cars/" + car.id() + "/ask")
                .addObject("proposed", lines.shown(form, AskLines.PROPOSED))
                .addObject("fitted", car == null ? lines.shown(form, AskLines.FITTED) : List.of())
                .addObject("actions", Action.values())
                .addObject("categories", Category.values())
                .addObject("calibrations", offered)
                .addObject("parts", catalog.find(null, "", OFFERED_PARTS))
                .addObject("answer", answer);
    }
}
