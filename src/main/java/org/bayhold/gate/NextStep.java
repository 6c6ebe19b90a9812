package org.bayhold.gate;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.bayhold.identity.Act;
import org.jspecify.annotations.Nullable;

/**
 * What a car on HOLD waits for: what mends a check that fails.
 *
 * @param sentence key of the sentence that says what to do
 * @param page key of the name of the page where it is done
 * @param path of that page
 * @param act who may do it
 */
record NextStep(String sentence, String page, String path, Act act) {
    /** What is still to be done, in the order of the checks, each page once; empty for a car that is CLEAR. */
    static List<NextStep> all(Decision decision, @Nullable UUID openItem) {
        String car = "/cars/" + decision.car().registration().vehicleId();
        List<NextStep> steps = new ArrayList<>();
        Set<String> pages = new HashSet<>();
        for (CheckResult check : decision.failed()) {
            NextStep step = of(check.reason(), car, openItem);
            if (pages.add(step.page())) {
                steps.add(step);
            }
        }
        return steps;
    }

    /** The first of them; null for a car that is CLEAR. */
    static @Nullable NextStep of(Decision decision, @Nullable UUID openItem) {
        return all(decision, openItem).stream().findFirst().orElse(null);
    }

    private static NextStep of(Reason reason, String car, @Nullable UUID openItem) {
        String sentence = "next." + reason.name();
        return switch (reason) {
            case PART_UNKNOWN -> new NextStep(sentence, "inspect.title", car + "/inspect", Act.RECORD_ON_CAR);
            case READ_BACK_MISSING,
                    READ_BACK_TOO_OLD,
                    READ_BACK_NOT_COMPARABLE,
                    READ_BACK_BEFORE_CHANGE,
                    RELATED_CODES ->
                new NextStep(sentence, "ecu-check.title", car + "/ecu-check", Act.FLASH_AND_READ_BACK);
            case NOT_ACKNOWLEDGED ->
                new NextStep(sentence, "acknowledge.title", car + "/acknowledge", Act.RECORD_ON_CAR);
            case DRIVE_LOG_MISSING,
                    DRIVE_LOG_INSUFFICIENT,
                    DRIVE_LOG_OF_ANOTHER,
                    DRIVE_LOG_OF_EACH_MAP,
                    DRIVE_LOG_FAILED ->
                new NextStep(sentence, "drive-log.title", car + "/drive-log", Act.FLASH_AND_READ_BACK);
            case RETUNE_OPEN, PART_SPEC_CORRECTED, SAME_PERSON, CHECK_DID_NOT_RUN ->
                new NextStep(
                        sentence, "retune.title", openItem == null ? car : "/retunes/" + openItem, Act.CLEAR_RETUNE);
            default -> new NextStep(sentence, "flash.title", car + "/flash", Act.FLASH_AND_READ_BACK);
        };
    }
}
