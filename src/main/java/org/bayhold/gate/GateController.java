package org.bayhold.gate;

import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.validation.Valid;
import java.net.URI;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.bayhold.buildsheet.CarRecords;
import org.bayhold.identity.Act;
import org.bayhold.identity.Call;
import org.bayhold.identity.Needs;
import org.bayhold.journal.Page;
import org.bayhold.refusal.Code;
import org.bayhold.refusal.Problems;
import org.jspecify.annotations.Nullable;
import org.springframework.http.MediaType;
import org.springframework.http.ProblemDetail;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.PutMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

/** The gate, handovers and policy over HTTP. */
@RestController
@RequestMapping("/api/v1")
class GateController {
    private final Decisions decisions;
    private final DecisionViews views;
    private final Handoffs handoffs;
    private final HandoffViews handoffViews;
    private final CarRecords records;
    private final PolicyBook policyBook;
    private final Problems problems;
    private final Clock clock;

    GateController(
            Decisions decisions,
            DecisionViews views,
            Handoffs handoffs,
            HandoffViews handoffViews,
            CarRecords records,
            PolicyBook policyBook,
            Problems problems,
            Clock clock) {
        this.decisions = decisions;
        this.views = views;
        this.handoffs = handoffs;
        this.handoffViews = handoffViews;
        this.records = records;
        this.policyBook = policyBook;
        this.problems = problems;
        this.clock = clock;
    }

    @Needs(Act.READ)
    @GetMapping("/vehicles/{id}/gate")
    DecisionView gate(
            @PathVariable UUID id,
            @RequestParam @Nullable Instant effectiveAt,
            @RequestParam @Nullable Instant knownAt) {
        return views.view(decisions.of(id, effectiveAt, knownAt));
    }

    @Needs(Act.HAND_OVER)
    @ApiResponse(responseCode = "201", content = @Content(schema = @Schema(implementation = HandoffView.class)))
    @ApiResponse(responseCode = "409", ref = "GateHold")
    @PostMapping("/vehicles/{id}/handoffs")
    ResponseEntity<?> handOver(
            Call call, @PathVariable UUID id, @Valid @RequestBody HandoffRequest request, HttpServletRequest http) {
        Handoffs.Result result = handoffs.handOver(call, id, request);
        if (result.handoff() != null) {
            return ResponseEntity.created(URI.create(result.handoff().certificateUrl()))
                    .body(result.handoff());
        }
        ProblemDetail problem = problems.of(Code.GATE_HOLD, List.of(), http);
        problem.setProperty("gate", result.refused());
        return ResponseEntity.status(problem.getStatus())
                .contentType(MediaType.APPLICATION_PROBLEM_JSON)
                .body(problem);
    }

    @Needs(Act.READ)
    @GetMapping("/vehicles/{id}/handoffs")
    Page<HandoffView> handoffs(@PathVariable UUID id) {
        return Page.whole(handoffViews.of(records.of(id)));
    }

    @Needs(Act.READ)
    @GetMapping("/policy")
    PolicyView policy() {
        Instant now = clock.instant().plusSeconds(60);
        return PolicyView.of(policyBook.policies().at(now, now));
    }

    @Needs(Act.SET_POLICY)
    @PutMapping("/policy")
    PolicyView set(Call call, @Valid @RequestBody PolicyRequest request) {
        return PolicyView.of(policyBook.set(call, request));
    }
}
