package org.bayhold.drivelog;

import static org.bayhold.drivelog.Evidence.none;
import static org.bayhold.drivelog.Evidence.numbers;
import static org.bayhold.drivelog.Evidence.shown;

import java.util.List;
import java.util.stream.Stream;
import org.bayhold.drivelog.Finding.Code;
import org.bayhold.prediction.Risk;
import org.bayhold.prediction.Sentence;

/** What the log itself is worth. {@code docs/drive-log.md, D13}. */
final class DataRules {
    private DataRules() {}

    static Stream<Finding> badData(Evidence evidence) {
        Quality quality = evidence.quality();
        double share = quality.badSharePercent();
        List<Flaw> stuck = quality.flaws().stream()
                .filter(flaw -> flaw.kind() == Flaw.Kind.STUCK)
                .toList();
        if (share <= evidence.thresholds().badSharePercent() && stuck.isEmpty()) {
            return none();
        }
        return Stream.of(new Finding(
                Code.BAD_DATA,
                Risk.LOW,
                numbers("badSharePercent", share, "stuckSensors", (double) stuck.size()),
                quality.flaws().stream()
                        .limit(5)
                        .map(flaw -> new Rows(flaw.firstRow(), flaw.firstRow()))
                        .toList(),
                stuck.isEmpty()
                        ? new Sentence("drivelog.finding.BAD_DATA", List.of(shown(share)))
                        : new Sentence(
                                "drivelog.finding.BAD_DATA.stuck",
                                List.of(
                                        String.valueOf(stuck.get(0).parameter()),
                                        shown(stuck.get(0).seconds(), 0)))));
    }

    static Stream<Finding> coldOrOpenLoopOnly(Evidence evidence) {
        Drive drive = evidence.drive();
        if (drive.all.seconds > 0) {
            return none();
        }
        return Stream.of(new Finding(
                Code.COLD_OR_OPEN_LOOP_ONLY,
                Risk.LOW,
                numbers("warmSeconds", drive.warmSeconds(), "closedLoopSeconds", drive.closedSeconds()),
                List.of(),
                new Sentence(
                        "drivelog.finding.COLD_OR_OPEN_LOOP_ONLY",
                        List.of(shown(drive.warmSeconds(), 0), shown(drive.closedSeconds(), 0)))));
    }

    /** Old long-term trims are the former calibration's; the total of both trims is right all the same. */
    static Stream<Finding> learnedBeforeFlash(Evidence evidence) {
        double learned = evidence.drive().learnedBefore();
        boolean wasReset = Boolean.TRUE.equals(evidence.facts().adaptationsReset());
        if (wasReset || !(Math.abs(learned) > evidence.thresholds().learnedPercent())) {
            return none();
        }
        return Stream.of(new Finding(
                Code.LEARNED_BEFORE_FLASH,
                Risk.LOW,
                numbers("longTermPercent", learned),
                List.of(new Rows(evidence.quality().firstRow(), evidence.drive().learnedLastRow())),
                new Sentence("drivelog.finding.LEARNED_BEFORE_FLASH", List.of(shown(learned)))));
    }
}
