package org.bayhold.gate;

import java.util.UUID;
import org.bayhold.identity.Act;
import org.jspecify.annotations.Nullable;

/**
 * What a car on HOLD waits for: what mends the first check that fails.
 *
 * @param sentence key of the sentence that says what to do
 * @param path of the page where it is done
 * @param act who may do it
 */
record NextStep(String sentence, String path, Act act) {
    /** Null for a car that is CLEAR. */
    static @Nullable NextStep of(Decision decision, @Nullable UUID openItem) {
        return decision.failed().stream()
                .findFirst()
                .map(check -> of(
                        check.reason(), "/cars/" + decision.car().registration().vehicleId(), openItem))
                .orElse(null);
    }

    private static NextStep of(Reason reason, String car, @Nullable UUID openItem) {
        String sentence = "next." + reason.name();
        return switch (reason) {
            case PART_UNKNOWN -> new NextStep(sentence, car + "/inspect", Act.RECORD_ON_CAR);
            case READ_BACK_MISSING, READ_BACK_TOO_OLD, READ_BACK_NOT_COMPARABLE, READ_BACK_BEFORE_CHANGE ->
                new NextStep(sentence, car + "/ecu-check", Act.FLASH_AND_READ_BACK);
            case NOT_ACKNOWLEDGED -> new NextStep(sentence, car + "/acknowledge", Act.RECORD_ON_CAR);
            case RETUNE_OPEN, PART_SPEC_CORRECTED, SAME_PERSON, DRIVE_LOG_MISSING, CHECK_DID_NOT_RUN ->
                new NextStep(sentence, openItem == null ? car : "/retunes/" + openItem, Act.CLEAR_RETUNE);
            default -> new NextStep(sentence, car + "/flash", Act.FLASH_AND_READ_BACK);
        };
    }
}
