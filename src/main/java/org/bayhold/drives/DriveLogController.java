package org.bayhold.drives;

import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import jakarta.validation.Valid;
import jakarta.validation.Validator;
import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.Size;
import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.bayhold.buildsheet.DriveLogged;
import org.bayhold.buildsheet.DriveLogged.Venue;
import org.bayhold.buildsheet.Fact;
import org.bayhold.identity.Act;
import org.bayhold.identity.Call;
import org.bayhold.identity.Needs;
import org.bayhold.journal.Hashing;
import org.bayhold.journal.Text;
import org.bayhold.refusal.Constraints;
import org.jspecify.annotations.Nullable;
import org.springframework.core.io.InputStreamResource;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;
import org.springframework.web.multipart.MultipartFile;
import tools.jackson.databind.JsonNode;

/** Drives and their judgements, over HTTP. */
@RestController
@RequestMapping("/api/v1/vehicles/{id}/drive-logs")
class DriveLogController {
    private final LoggedDrives drives;
    private final KnownDrives known;
    private final LogFiles files;
    private final LogDownload download;
    private final SaidColumns columns;
    private final Validator validator;

    DriveLogController(
            LoggedDrives drives,
            KnownDrives known,
            LogFiles files,
            LogDownload download,
            SaidColumns columns,
            Validator validator) {
        this.drives = drives;
        this.known = known;
        this.files = files;
        this.download = download;
        this.columns = columns;
        this.validator = validator;
    }

    /**
     * How a drive is read when it is judged again; what is left out is as it was.
     *
     * @param columns heading to parameter, or to {@code {parameter, unit}}
     */
    record AgainRequest(
            @Nullable JsonNode columns,

            @Nullable @DecimalMin("0.0001") @DecimalMax("60") Double sampleSeconds,

            @Nullable @Size(max = 60) String map) {}

    @Needs(Act.READ)
    @GetMapping
    List<DriveLogView> list(@PathVariable UUID id) {
        return known.of(id);
    }

    @Needs(Act.READ)
    @GetMapping("/{logId}")
    DriveLogView one(@PathVariable UUID id, @PathVariable UUID logId) {
        return known.view(id, logId);
    }

    /** The file as it was uploaded. */
    @Needs(Act.READ)
    @ApiResponse(responseCode = "200", content = @Content(mediaType = "text/csv"))
    @GetMapping("/{logId}/file")
    ResponseEntity<InputStreamResource> file(@PathVariable UUID id, @PathVariable UUID logId) {
        return download.of(known.fact(id, logId));
    }

    @Needs(Act.FLASH_AND_READ_BACK)
    @ApiResponse(responseCode = "201", content = @Content(schema = @Schema(implementation = DriveLogView.class)))
    @ApiResponse(
            responseCode = "200",
            description = "The file is on record for this car already, read in the same way: that record.",
            content = @Content(schema = @Schema(implementation = DriveLogView.class)))
    @PostMapping(consumes = MediaType.MULTIPART_FORM_DATA_VALUE)
    ResponseEntity<DriveLogView> record(
            Call call,
            @PathVariable UUID id,
            @RequestParam MultipartFile file,
            @RequestParam(name = "columns", required = false) @Nullable String said,
            @RequestParam(required = false) @Nullable Double sampleSeconds,
            @RequestParam(required = false) @Nullable String map,
            @RequestParam(required = false) @Nullable Venue venue,
            @RequestParam(required = false) @Nullable Instant effectiveAt,
            @RequestParam(required = false) Fact.@Nullable Source source,
            @RequestParam(required = false) @Nullable String performedBy,
            @RequestParam(required = false) @Nullable String note)
            throws IOException {
        DriveLogRequest request = new DriveLogRequest(
                columns.of(said), sampleSeconds, Text.strip(map), venue, effectiveAt, source, performedBy, note);
        Constraints.hold(validator, request, "");
        LogFiles.Uploaded uploaded;
        try (InputStream in = file.getInputStream()) {
            uploaded = files.receive(in);
        }
        try {
            Call of = new Call(call.caller(), call.idempotencyKey(), Hashing.sha256(id + uploaded.sha256() + request));
            DriveLogView view = drives.record(of, id, uploaded.sha256(), request, bytes -> {});
            return view.isOnRecordAlready() ? ResponseEntity.ok(view) : created(view);
        } finally {
            // one that was put on record does not wait any more
            files.drop(uploaded.sha256());
        }
    }

    @Needs(Act.FLASH_AND_READ_BACK)
    @PostMapping("/{logId}/judgements")
    ResponseEntity<DriveLogView> again(
            Call call, @PathVariable UUID id, @PathVariable UUID logId, @Valid @RequestBody AgainRequest request) {
        DriveLogged before = known.fact(id, logId);
        DriveLogRequest reading = DriveLogRequest.again(
                before,
                request.columns() == null ? null : columns.of(request.columns()),
                request.sampleSeconds(),
                Text.strip(request.map()));
        return created(drives.again(call, id, before.drive(), reading, bytes -> {}));
    }

    private static ResponseEntity<DriveLogView> created(DriveLogView view) {
        return ResponseEntity.created(URI.create("/api/v1/vehicles/" + view.vehicleId() + "/drive-logs/" + view.id()))
                .body(view);
    }
}
