package org.bayhold.vehicle;

import jakarta.validation.Valid;
import java.net.URI;
import java.util.List;
import java.util.UUID;
import org.bayhold.identity.Act;
import org.bayhold.identity.Call;
import org.bayhold.identity.Caller;
import org.bayhold.identity.Needs;
import org.bayhold.journal.Page;
import org.bayhold.journal.Text;
import org.bayhold.refusal.ETags;
import org.bayhold.refusal.Refusal;
import org.jspecify.annotations.Nullable;
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

/** Cars over HTTP. */
@RestController
@RequestMapping("/api/v1/vehicles")
class VehicleController {
    private final VehicleWrites writes;
    private final VehicleRows rows;
    private final Vehicles vehicles;

    VehicleController(VehicleWrites writes, VehicleRows rows, Vehicles vehicles) {
        this.writes = writes;
        this.rows = rows;
        this.vehicles = vehicles;
    }

    @Needs(Act.RECORD_ON_CAR)
    @PostMapping
    ResponseEntity<VehicleView> register(Call call, @Valid @RequestBody VehicleRequest request) {
        VehicleView view = writes.register(call, request).value();
        return ResponseEntity.created(URI.create("/api/v1/vehicles/" + view.id()))
                .eTag(ETags.of(view.version()))
                .body(view);
    }

    @Needs(Act.READ)
    @GetMapping
    Page<VehicleView> find(
            Caller caller,
            @RequestParam @Nullable String vin,
            @RequestParam @Nullable String q,
            @RequestParam @Nullable UUID after,
            @RequestParam @Nullable Integer limit) {
        String exact = Text.upper(vin);
        if (exact != null) {
            List<VehicleRow> found = rows.findByVin(exact).stream().toList();
            return Page.whole(vehicles.views(found, caller));
        }
        int size = Page.size(limit);
        List<VehicleRow> found = rows.find(Page.like(q), Page.after(after), size + 1);
        return Page.of(vehicles.views(found, caller), size, VehicleView::id);
    }

    @Needs(Act.READ)
    @GetMapping("/{id}")
    ResponseEntity<VehicleView> get(Caller caller, @PathVariable UUID id) {
        VehicleView view = vehicles.view(id, caller).orElseThrow(() -> Refusal.notFound("vehicle.not-found"));
        return ResponseEntity.ok().eTag(ETags.of(view.version())).body(view);
    }

    @Needs(Act.RECORD_ON_CAR)
    @PatchMapping("/{id}")
    ResponseEntity<VehicleView> amend(
            Call call,
            @PathVariable UUID id,
            @RequestHeader(name = "If-Match", required = false) @Nullable String ifMatch,
            @Valid @RequestBody VehiclePatch patch) {
        VehicleView view =
                writes.amend(call, id, ETags.required(ifMatch), patch).value();
        return ResponseEntity.ok().eTag(ETags.of(view.version())).body(view);
    }
}
