package org.bayhold.buildsheet;

import org.bayhold.journal.Text;
import org.springframework.stereotype.Component;

/** The customer acknowledged the risk and the use of the car. */
@Component
class AcknowledgementRecorder extends Recorder<AcknowledgementRequest, AcknowledgementView> {
    AcknowledgementRecorder() {
        super(AcknowledgementRequest.class, AcknowledgementView.class, Fact.Acknowledged.class);
    }

    @Override
    Fact fact(OpenCar car, CarState before, Stamp stamp, AcknowledgementRequest request) {
        return new Fact.Acknowledged(
                stamp,
                request.usage(),
                car.chain().keepText(request.signedBy().strip()),
                car.chain().keep(Text.strip(request.text())));
    }
}
