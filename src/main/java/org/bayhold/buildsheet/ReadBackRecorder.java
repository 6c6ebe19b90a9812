package org.bayhold.buildsheet;

import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.bayhold.calibration.Calibrations;
import org.bayhold.journal.Text;
import org.bayhold.obd.Reading;
import org.bayhold.obd.Service09;
import org.bayhold.obd.UndecodableException;
import org.bayhold.refusal.Refusal;
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
        return Set.copyOf(calibrations.idsShownBy(reading(request)));
    }

    @Override
    Fact fact(OpenCar car, CarState before, Stamp stamp, ReadBackRequest request) {
        return new Fact.ReadBack(
                stamp,
                reading(request),
                request.source() == null ? Fact.Source.SHOP : request.source(),
                car.chain().keep(Text.strip(request.performedBy())),
                car.chain().keep(Text.strip(request.note())));
    }

    private static Reading reading(ReadBackRequest request) {
        String response = Text.strip(request.response());
        boolean typed = request.calid() != null || request.cvn() != null || request.fileSha256() != null;
        if (response != null) {
            if (typed) {
                throw Refusal.invalid("response", "read-back.one-way");
            }
            return decoded(response);
        }
        String calid = Text.strip(request.calid());
        String cvn = Text.upper(request.cvn());
        if ((calid == null) != (cvn == null)) {
            throw Refusal.invalid(calid == null ? "calid" : "cvn", "read-back.calid-and-cvn");
        }
        Reading reading = new Reading(calid, cvn, Text.lower(request.fileSha256()));
        if (reading.equals(Reading.NOTHING)) {
            throw Refusal.invalid("calid", "read-back.nothing");
        }
        return reading;
    }

    private static Reading decoded(String response) {
        try {
            Reading reading = Service09.decode(response).reading();
            if (reading.calid() == null || reading.cvn() == null) {
                throw Refusal.invalid("response", "read-back.no-calid");
            }
            return reading;
        } catch (UndecodableException e) {
            throw Refusal.invalid(
                    "response", "read-back.undecodable", e.line(), e.flaw().sentence());
        }
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
    }
}
