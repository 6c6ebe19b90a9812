package org.bayhold.advice;

import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import jakarta.validation.Valid;
import java.net.URI;
import java.util.List;
import java.util.UUID;
import org.bayhold.identity.Act;
import org.bayhold.identity.Call;
import org.bayhold.identity.Caller;
import org.bayhold.identity.Needs;
import org.bayhold.journal.Page;
import org.jspecify.annotations.Nullable;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

/** Answers over HTTP. */
@RestController
@RequestMapping("/api/v1/advice")
class AdviceController {
    private final AdviceWrites writes;
    private final AdviceRows rows;
    private final Advices advices;
    private final LetterPdf pdf;

    AdviceController(AdviceWrites writes, AdviceRows rows, Advices advices, LetterPdf pdf) {
        this.writes = writes;
        this.rows = rows;
        this.advices = advices;
        this.pdf = pdf;
    }

    @Needs(Act.ADVISE)
    @ApiResponse(responseCode = "201", content = @Content(schema = @Schema(implementation = AdviceView.class)))
    @ApiResponse(responseCode = "404", ref = "NotFound")
    @PostMapping
    ResponseEntity<AdviceView> answer(Call call, @Valid @RequestBody AdviceRequest question) {
        AdviceView view = advices.get(writes.answer(call, question), call.caller());
        return ResponseEntity.created(URI.create("/api/v1/advice/" + view.id())).body(view);
    }

    @Needs(Act.READ)
    @GetMapping
    Page<AdviceView> find(
            Caller caller,
            @RequestParam @Nullable UUID vehicleId,
            @RequestParam @Nullable String q,
            @RequestParam @Nullable UUID after,
            @RequestParam @Nullable Integer limit) {
        int size = Page.size(limit);
        List<AdviceRow> found = vehicleId == null
                ? rows.find(Page.like(q), Page.after(after), size + 1)
                : rows.findOfCar(vehicleId, Page.like(q), Page.after(after), size + 1);
        return Page.of(advices.views(found, caller), size, AdviceView::id);
    }

    @Needs(Act.READ)
    @GetMapping("/{id}")
    AdviceView get(Caller caller, @PathVariable UUID id) {
        return advices.get(id, caller);
    }

    @Needs(Act.READ)
    @GetMapping(path = "/{id}/letter", produces = MediaType.APPLICATION_PDF_VALUE)
    byte[] letter(Caller caller, @PathVariable UUID id) {
        return pdf.of(advices.letter(id, caller));
    }

    @Needs(Act.ADVISE)
    @PostMapping("/{id}/planned-work")
    ResponseEntity<AdviceView> plan(Call call, @PathVariable UUID id) {
        writes.plan(call, id);
        return ResponseEntity.created(URI.create("/api/v1/advice/" + id)).body(advices.get(id, call.caller()));
    }

    @Needs(Act.ADVISE)
    @PostMapping("/{id}/planned-work/dropping")
    AdviceView drop(Call call, @PathVariable UUID id) {
        writes.drop(call, id);
        return advices.get(id, call.caller());
    }
}
