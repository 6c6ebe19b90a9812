package org.bayhold.buildsheet;

import jakarta.validation.Valid;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.Size;
import java.net.URI;
import java.util.UUID;
import org.bayhold.identity.Act;
import org.bayhold.identity.Call;
import org.bayhold.identity.Needs;
import org.jspecify.annotations.Nullable;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;
import tools.jackson.databind.JsonNode;

/** What happened to a car, over HTTP. */
@RestController
@RequestMapping("/api/v1")
class CarFactsController {
    private final RecordFacts facts;
    private final ArrivalRecorder arrivals;
    private final PartChangeRecorder partChanges;
    private final InspectionRecorder inspections;
    private final FlashRecorder flashes;
    private final ReadBackRecorder readBacks;
    private final AcknowledgementRecorder acknowledgements;
    private final Voidings voidings;

    CarFactsController(
            RecordFacts facts,
            ArrivalRecorder arrivals,
            PartChangeRecorder partChanges,
            InspectionRecorder inspections,
            FlashRecorder flashes,
            ReadBackRecorder readBacks,
            AcknowledgementRecorder acknowledgements,
            Voidings voidings) {
        this.facts = facts;
        this.arrivals = arrivals;
        this.partChanges = partChanges;
        this.inspections = inspections;
        this.flashes = flashes;
        this.readBacks = readBacks;
        this.acknowledgements = acknowledgements;
        this.voidings = voidings;
    }

    /** Why a record is struck out, and the right record's body where there is one. */
    record VoidingRequest(
            @NotBlank @Size(max = 2000) String reason,
            @Nullable JsonNode replacement) {}

    @Needs(Act.RECORD_ON_CAR)
    @PostMapping("/vehicles/{id}/arrivals")
    ResponseEntity<ArrivalView> arrive(Call call, @PathVariable UUID id, @Valid @RequestBody ArrivalRequest request) {
        ArrivalView view = facts.record(call, id, arrivals, request).value();
        return created(id, view);
    }

    @Needs(Act.RECORD_ON_CAR)
    @PostMapping("/vehicles/{id}/part-changes")
    ResponseEntity<PartChangeView> change(
            Call call, @PathVariable UUID id, @Valid @RequestBody PartChangeRequest request) {
        return created(id, facts.record(call, id, partChanges, request).value());
    }

    @Needs(Act.RECORD_ON_CAR)
    @PostMapping("/vehicles/{id}/inspections")
    ResponseEntity<InspectionView> inspect(
            Call call, @PathVariable UUID id, @Valid @RequestBody InspectionRequest request) {
        return created(id, facts.record(call, id, inspections, request).value());
    }

    @Needs(Act.FLASH_AND_READ_BACK)
    @PostMapping("/vehicles/{id}/flashes")
    ResponseEntity<FlashView> flash(Call call, @PathVariable UUID id, @Valid @RequestBody FlashRequest request) {
        return created(id, facts.record(call, id, flashes, request).value());
    }

    @Needs(Act.FLASH_AND_READ_BACK)
    @PostMapping("/vehicles/{id}/read-backs")
    ResponseEntity<ReadBackView> readBack(
            Call call, @PathVariable UUID id, @Valid @RequestBody ReadBackRequest request) {
        return created(id, facts.record(call, id, readBacks, request).value());
    }

    @Needs(Act.RECORD_ON_CAR)
    @PostMapping("/vehicles/{id}/acknowledgements")
    ResponseEntity<AcknowledgementView> acknowledge(
            Call call, @PathVariable UUID id, @Valid @RequestBody AcknowledgementRequest request) {
        return created(id, facts.record(call, id, acknowledgements, request).value());
    }

    @Needs(Act.STRIKE_OUT)
    @PostMapping("/records/{id}/voiding")
    VoidingView strikeOut(Call call, @PathVariable UUID id, @Valid @RequestBody VoidingRequest request) {
        return voidings.strikeOut(call, id, request.reason(), request.replacement())
                .value();
    }

    /** A fact is read in its car's history. */
    private static <V> ResponseEntity<V> created(UUID vehicleId, V view) {
        return ResponseEntity.created(URI.create("/api/v1/vehicles/" + vehicleId + "/history"))
                .body(view);
    }
}
