package org.bayhold.buildsheet;

import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.bayhold.calibration.Calibrations;
import org.bayhold.journal.Text;
import org.bayhold.obd.Readiness;
import org.bayhold.obd.Reading;
import org.springframework.stereotype.Component;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** What the ECU itself reports. */
@Component
class ReadBackRecorder extends Recorder<ReadBackRequest, ReadBackView> {
    private final Calibrations calibrations;

    ReadBackRecorder(Calibrations calibrations) {
        super(ReadBackRequest.class, ReadBackView.class, Fact.ReadBack.class);
        this.calibrations = calibrations;
    }

    /** A check may find a revision that nothing else on the car's record names (rule 10). */
    @Override
    Set<UUID> cites(ReadBackRequest request) {
        return Set.copyOf(calibrations.idsShownBy(ToldByEcu.in(request).reading()));
    }

    @Override
    Fact fact(OpenCar car, CarState before, Stamp stamp, ReadBackRequest request) {
        ToldByEcu told = ToldByEcu.in(request);
        return new Fact.ReadBack(
                stamp,
                told.reading(),
                told.troubleCodes(),
                told.readiness(),
                request.source() == null ? Fact.Source.SHOP : request.source(),
                car.chain().keep(Text.strip(request.performedBy())),
                car.chain().keep(Text.strip(request.note())));
    }

    @Override
    void describe(OpenCar car, CarState before, Fact fact, ObjectNode answer) {
        Reading reading = ((Fact.ReadBack) fact).reading();
        CarState after = car.at(fact.stamp().effectiveAt());
        Optional<Reading> expected = after.expectedReading();
        Optional<Boolean> matches = expected.filter(reading::comparable).map(known -> reading.shows(known));
        answer.put("matches", matches.orElse(null));
        reading.oddities().forEach(((ArrayNode) answer.get("warnings"))::add);
        // an ECU may have been told to report what it does not run
        Reading factory = after.registration().factoryReading();
        if (after.revision().isPresent()
                && factory.cvn() != null
                && factory.cvn().equals(reading.cvn())) {
            ((ArrayNode) answer.get("warnings")).add("CVN_IS_THE_FACTORYS");
        }
        Readiness readiness = ((Fact.ReadBack) fact).readiness();
        if (readiness != null && !CodeWords.isComplete(readiness)) {
            ((ArrayNode) answer.get("warnings")).add("MONITORS_NOT_COMPLETE");
        }
    }
}
