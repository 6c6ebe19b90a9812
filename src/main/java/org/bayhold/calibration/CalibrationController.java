package org.bayhold.calibration;

import com.fasterxml.jackson.annotation.JsonUnwrapped;
import io.swagger.v3.oas.annotations.media.ArraySchema;
import io.swagger.v3.oas.annotations.media.Schema;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.Size;
import java.net.URI;
import java.util.List;
import java.util.UUID;
import org.bayhold.identity.Act;
import org.bayhold.identity.Call;
import org.bayhold.identity.Needs;
import org.bayhold.journal.Page;
import org.bayhold.refusal.Refusal;
import org.jspecify.annotations.Nullable;
import org.springframework.data.domain.Limit;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

/** Revisions over HTTP. */
@RestController
@RequestMapping("/api/v1/calibrations")
class CalibrationController {
    private final CalibrationWrites writes;
    private final CalibrationRows rows;
    private final CalibrationViews views;

    CalibrationController(CalibrationWrites writes, CalibrationRows rows, CalibrationViews views) {
        this.writes = writes;
        this.rows = rows;
        this.views = views;
    }

    /** Why a revision is withdrawn. */
    record WithdrawalRequest(@NotBlank @Size(max = 2000) String reason) {}

    /** A withdrawn revision, and the cars that run it. */
    record WithdrawalAnswer(
            @JsonUnwrapped CalibrationView calibration,

            @ArraySchema(schema = @Schema(ref = "VehicleView"))
            List<?> affectedVehicles) {}

    @Needs(Act.ISSUE_CALIBRATION)
    @PostMapping
    ResponseEntity<CalibrationView> issue(Call call, @Valid @RequestBody CalibrationRequest request) {
        CalibrationView view = writes.issue(call, request).value();
        return ResponseEntity.created(URI.create("/api/v1/calibrations/" + view.id()))
                .body(view);
    }

    @Needs(Act.ISSUE_CALIBRATION)
    @PostMapping("/{id}/withdrawal")
    WithdrawalAnswer withdraw(Call call, @PathVariable UUID id, @Valid @RequestBody WithdrawalRequest request) {
        CalibrationWrites.WithdrawalView view = writes.withdraw(call, id, request.reason());
        return new WithdrawalAnswer(view.calibration(), view.affectedVehicles());
    }

    @Needs(Act.READ)
    @GetMapping("/{id}")
    CalibrationView get(@PathVariable UUID id) {
        return views.of(List.of(id)).stream().findFirst().orElseThrow(() -> Refusal.notFound("calibration.not-found"));
    }

    @Needs(Act.READ)
    @GetMapping
    Page<CalibrationView> find(
            @RequestParam @Nullable String ecuHardware,
            @RequestParam @Nullable String q,
            @RequestParam @Nullable UUID after,
            @RequestParam @Nullable Integer limit) {
        int size = Page.size(limit);
        List<UUID> found = rows.find(ecuHardware, Page.like(q), Page.after(after), Limit.of(size + 1));
        return Page.of(views.of(found), size, CalibrationView::id);
    }
}
