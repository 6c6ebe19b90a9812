package org.bayhold.buildsheet;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.bayhold.catalog.Catalog;
import org.bayhold.catalog.Place;
import org.bayhold.journal.CanonicalJson;
import org.bayhold.journal.Text;
import org.bayhold.refusal.Refusal;
import org.springframework.stereotype.Component;
import tools.jackson.databind.node.ObjectNode;

/** What somebody found on the car. */
@Component
class InspectionRecorder extends Recorder<InspectionRequest, InspectionView> {
    private final Catalog catalog;
    private final CanonicalJson json;

    InspectionRecorder(Catalog catalog, CanonicalJson json) {
        super(InspectionRequest.class, InspectionView.class, Fact.Inspected.class);
        this.catalog = catalog;
        this.json = json;
    }

    @Override
    Fact fact(OpenCar car, CarState before, Stamp stamp, InspectionRequest request) {
        List<Fact.Inspected.Line> lines = new ArrayList<>();
        Set<Place> places = new HashSet<>();
        for (int i = 0; i < request.lines().size(); i++) {
            InspectionRequest.Line line = request.lines().get(i);
            String field = "lines[" + i + "]";
            Place place = Place.typed(line.category(), line.position());
            if (!places.add(place)) {
                throw Refusal.invalid(field, "inspection.place-twice", line.category());
            }
            if (line.state() == Fitted.State.UNKNOWN) {
                throw Refusal.invalid(field + ".state", "inspection.unknown");
            }
            if ((line.state() == Fitted.State.PART) != (line.partSpecId() != null)) {
                throw Refusal.invalid(field + ".partSpecId", "inspection.part");
            }
            if (line.partSpecId() != null) {
                catalog.cited(line.partSpecId(), line.category(), field + ".partSpecId");
            }
            lines.add(new Fact.Inspected.Line(place, line.state(), line.partSpecId()));
        }
        return new Fact.Inspected(
                stamp,
                lines,
                request.source() == null ? Fact.Source.SHOP : request.source(),
                request.odometerKm(),
                car.chain().keep(Text.strip(request.note())));
    }

    @Override
    void describe(OpenCar car, CarState before, Fact fact, ObjectNode answer) {
        List<InspectionView.Difference> differences = ((Fact.Inspected) fact)
                .lines().stream()
                        .map(line -> new InspectionView.Difference(
                                line.place().category(),
                                line.place().position(),
                                before.fittedAt(line.place()),
                                new Fitted(line.state(), line.partSpecId())))
                        .filter(line -> line.recorded().state() != Fitted.State.UNKNOWN)
                        .filter(line -> !line.recorded().equals(line.found()))
                        .toList();
        answer.set("differences", json.tree(differences));
    }
}
