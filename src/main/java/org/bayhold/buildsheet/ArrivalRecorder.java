package org.bayhold.buildsheet;

import org.bayhold.journal.Text;
import org.springframework.stereotype.Component;

/** The car came in. */
@Component
class ArrivalRecorder extends Recorder<ArrivalRequest, ArrivalView> {
    ArrivalRecorder() {
        super(ArrivalRequest.class, ArrivalView.class, Fact.Arrived.class);
    }

    @Override
    Fact fact(OpenCar car, CarState before, Stamp stamp, ArrivalRequest request) {
        return new Fact.Arrived(stamp, request.odometerKm(), car.chain().keep(Text.strip(request.note())));
    }
}
