package org.bayhold.buildsheet;

import org.bayhold.catalog.Catalog;
import org.bayhold.catalog.Category;
import org.bayhold.catalog.Place;
import org.bayhold.journal.Text;
import org.bayhold.refusal.Refusal;
import org.springframework.stereotype.Component;

/** Installs, removals, adjustments. A part that the catalogue does not know stops nobody: it needs a note. */
@Component
class PartChangeRecorder extends Recorder<PartChangeRequest, PartChangeView> {
    private final Catalog catalog;

    PartChangeRecorder(Catalog catalog) {
        super(PartChangeRequest.class, PartChangeView.class, Fact.PartChanged.class);
        this.catalog = catalog;
    }

    @Override
    Fact fact(OpenCar car, CarState before, Stamp stamp, PartChangeRequest request) {
        if (request.partSpecId() != null) {
            catalog.cited(request.partSpecId(), request.category(), "partSpecId");
        } else if (request.action() == Fact.Action.FIT && Text.strip(request.note()) == null) {
            throw Refusal.invalid("note", "part-change.note-for-unidentified");
        }
        if (request.ecuHardware() != null && request.category() != Category.ECU) {
            throw Refusal.invalid("ecuHardware", "part-change.ecu-hardware-elsewhere");
        }
        return new Fact.PartChanged(
                stamp,
                Place.typed(request.category(), request.position()),
                request.action(),
                request.partSpecId(),
                Text.strip(request.serial()),
                Text.strip(request.ecuHardware()),
                request.source(),
                request.odometerKm(),
                car.chain().keep(Text.strip(request.performedBy())),
                car.chain().keep(Text.strip(request.note())));
    }
}
