package org.bayhold.advice;

import java.util.List;
import java.util.UUID;
import org.bayhold.identity.Act;
import org.bayhold.identity.Call;
import org.bayhold.identity.Caller;
import org.bayhold.identity.Needs;
import org.bayhold.journal.Page;
import org.bayhold.page.Form;
import org.bayhold.vehicle.Vehicles;
import org.springframework.http.ContentDisposition;
import org.springframework.http.HttpHeaders;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.servlet.ModelAndView;

/** <i>Answers</i>: those that were kept, one with its letter, and the work that it may become. */
@Controller
class AnswerPages {
    private static final int LISTED = 100;
    private static final String ONE = "advice/answer";

    private final AdviceRows rows;
    private final Advices advices;
    private final AdviceWrites writes;
    private final AdviceWords words;
    private final LetterPdf pdf;
    private final Vehicles vehicles;

    AnswerPages(
            AdviceRows rows,
            Advices advices,
            AdviceWrites writes,
            AdviceWords words,
            LetterPdf pdf,
            Vehicles vehicles) {
        this.rows = rows;
        this.advices = advices;
        this.writes = writes;
        this.words = words;
        this.pdf = pdf;
        this.vehicles = vehicles;
    }

    /** An answer in the list. */
    record Listed(AdviceView answer, String car, List<String> changes) {}

    @Needs(Act.READ)
    @GetMapping("/answers")
    ModelAndView list(Caller caller, Form form) {
        List<AdviceView> found = advices.views(rows.newest(Page.like(form.value("named")), LISTED), caller);
        return form.show("advice/answers")
                .addObject(
                        "answers",
                        found.stream().map(answer -> listed(answer, caller)).toList());
    }

    @Needs(Act.READ)
    @GetMapping("/answers/{id}")
    ModelAndView one(Caller caller, @PathVariable UUID id, Form form) {
        return show(form.show(ONE), id, caller);
    }

    @Needs(Act.READ)
    @GetMapping("/answers/{id}/letter")
    ResponseEntity<byte[]> letter(Caller caller, @PathVariable UUID id) {
        return ResponseEntity.ok()
                .contentType(MediaType.APPLICATION_PDF)
                .header(
                        HttpHeaders.CONTENT_DISPOSITION,
                        ContentDisposition.inline()
                                .filename("answer-" + id + ".pdf")
                                .build()
                                .toString())
                .body(pdf.of(advices.letter(id, caller)));
    }

    @Needs(Act.ADVISE)
    @PostMapping("/answers/{id}/plan")
    ModelAndView plan(Call call, @PathVariable UUID id, Form form) {
        ModelAndView page = form.submit(ONE, () -> {
            writes.plan(call, id);
            return form.done("/answers/" + id, "said.work-planned");
        });
        return Form.leadsOn(page) ? page : show(page, id, call.caller());
    }

    @Needs(Act.ADVISE)
    @PostMapping("/answers/{id}/drop")
    ModelAndView drop(Call call, @PathVariable UUID id, Form form) {
        ModelAndView page = form.submit(ONE, () -> {
            writes.drop(call, id);
            return form.done("/answers/" + id, "said.work-dropped");
        });
        return Form.leadsOn(page) ? page : show(page, id, call.caller());
    }

    private ModelAndView show(ModelAndView page, UUID id, Caller caller) {
        AdviceView answer = advices.get(id, caller);
        UUID vehicleId = answer.vehicleId();
        return page.addObject("answer", answer)
                .addObject("letter", advices.letter(id, caller))
                .addObject(
                        "car",
                        vehicleId == null
                                ? null
                                : vehicles.view(vehicleId, caller).orElse(null))
                .addObject(
                        "install",
                        vehicleId == null
                                ? null
                                : WorkOnCars.install(vehicleId, answer.body().proposed()));
    }

    private Listed listed(AdviceView answer, Caller caller) {
        UUID vehicleId = answer.vehicleId();
        String car = vehicleId == null
                ? words.message("advice.letter.described", answer.body().ecuHardware())
                : vehicles.view(vehicleId, caller)
                        .map(view -> view.description())
                        .orElse("");
        return new Listed(
                answer,
                car,
                answer.body().proposed().stream().map(words::change).toList());
    }
}
