package org.bayhold.gate;

import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.validation.Valid;
import java.util.List;
import java.util.UUID;
import org.bayhold.buildsheet.CarRecords;
import org.bayhold.identity.Act;
import org.bayhold.identity.Call;
import org.bayhold.identity.Needs;
import org.bayhold.journal.Page;
import org.bayhold.refusal.Code;
import org.bayhold.refusal.ETags;
import org.bayhold.refusal.Problems;
import org.jspecify.annotations.Nullable;
import org.springframework.http.MediaType;
import org.springframework.http.ProblemDetail;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PatchMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestHeader;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

/** Retune items over HTTP. */
@RestController
@RequestMapping("/api/v1")
class RetuneController {
    private final RetuneItems items;
    private final CarRecords records;
    private final Problems problems;

    RetuneController(RetuneItems items, CarRecords records, Problems problems) {
        this.items = items;
        this.records = records;
        this.problems = problems;
    }

    @Needs(Act.READ)
    @GetMapping("/retune-items")
    Page<RetuneItemView> find(
            @RequestParam RetuneItemView.@Nullable Status status,
            @RequestParam @Nullable UUID after,
            @RequestParam @Nullable Integer limit) {
        int size = Page.size(limit);
        return Page.of(items.find(status, Page.after(after), size + 1), size, RetuneItemView::id);
    }

    @Needs(Act.READ)
    @GetMapping("/vehicles/{id}/retune-items")
    Page<RetuneItemView> ofVehicle(@PathVariable UUID id) {
        records.require(id);
        return Page.whole(items.ofVehicle(id));
    }

    @Needs(Act.READ)
    @GetMapping("/retune-items/{id}")
    ResponseEntity<RetuneItemView> get(@PathVariable UUID id) {
        return answer(items.get(id));
    }

    @Needs(Act.PLAN_RETUNE)
    @PatchMapping("/retune-items/{id}")
    ResponseEntity<RetuneItemView> plan(
            Call call,
            @PathVariable UUID id,
            @RequestHeader(name = "If-Match", required = false) @Nullable String ifMatch,
            @Valid @RequestBody PlanRequest request) {
        return answer(items.plan(call, id, ETags.required(ifMatch), request));
    }

    @Needs(Act.CLEAR_RETUNE)
    @ApiResponse(responseCode = "200", content = @Content(schema = @Schema(implementation = RetuneItemView.class)))
    @ApiResponse(responseCode = "409", ref = "EvidenceMissing")
    @PostMapping("/retune-items/{id}/clearance")
    ResponseEntity<?> clear(
            Call call, @PathVariable UUID id, @Valid @RequestBody ClearanceRequest request, HttpServletRequest http) {
        RetuneItems.SignOff signOff = items.clear(call, id, request);
        if (signOff.item() != null) {
            return answer(signOff.item());
        }
        ProblemDetail problem = problems.of(Code.EVIDENCE_MISSING, List.of(), http);
        problem.setProperty("checks", signOff.missing());
        return ResponseEntity.status(problem.getStatus())
                .contentType(MediaType.APPLICATION_PROBLEM_JSON)
                .body(problem);
    }

    private static ResponseEntity<RetuneItemView> answer(RetuneItemView item) {
        return ResponseEntity.ok().eTag(ETags.of(item.version())).body(item);
    }
}
