package org.bayhold.gate;

import java.time.Instant;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.bayhold.buildsheet.CarRecord;
import org.bayhold.buildsheet.CarState;
import org.bayhold.buildsheet.Cause;
import org.bayhold.buildsheet.Fact;
import org.bayhold.catalog.Correction;

/** The gate asked about any car at any two times, each time under the policy of then. Pure. */
public final class Replay {
    private final Policies policies;

    Replay(Policies policies) {
        this.policies = policies;
    }

    /**
     * What the record says of a car's calibration at one moment.
     *
     * @param unmatched it does not match the car; a missing paper or signature alone never makes it so (rule 13)
     * @param readBackDiffers the newest ECU check shows something else
     */
    public record Match(boolean unmatched, boolean readBackDiffers) {}

    public Decision decide(CarRecord record, CarState car) {
        return decide(record, car, Gate.RULES);
    }

    /** As the version {@code rules} of the rules has it. */
    public Decision decide(CarRecord record, CarState car, int rules) {
        return Gate.decide(question(record, car), rules);
    }

    /** Judged at its own time and at now; where both hold, the one at its own time is told. docs/rules.md, rule 5. */
    public Decision atTheDoor(CarRecord record, Instant at, Instant now, int rules) {
        Decision then = decide(record, record.at(at, now), rules);
        return then.isClear() && at.isBefore(now) ? decide(record, record.at(now, now), rules) : then;
    }

    public Match match(CarRecord record, CarState car) {
        Question question = question(record, car);
        boolean differs = ReadBackCheck.matches(question).reason() == Reason.READ_BACK_DIFFERS;
        boolean unmatched = differs
                || Checks.MATCHING.stream()
                        .anyMatch(check -> Gate.run(check, question).failed());
        return new Match(unmatched, differs);
    }

    /** The failed checks that tell that the calibration does not match the car. */
    public static List<CheckResult> failedMatch(Decision decision) {
        return decision.failed().stream().filter(Causes::isAboutTheMatch).toList();
    }

    /** The causes that a fact of a retune item brings; none for any other fact. */
    public static List<Cause> told(Fact fact) {
        return Causes.told(fact);
    }

    Question question(CarRecord record, CarState car) {
        return new Question(
                car, policies.at(car.effectiveAt(), car.knownAt()), record.groups(), unanswered(record, car));
    }

    /** Corrections of parts that the car carried before they were corrected, for which its item has no cause yet. */
    static List<Correction> unanswered(CarRecord record, CarState car) {
        if (record.corrections().isEmpty()) {
            return List.of();
        }
        Set<UUID> answered = new HashSet<>();
        for (Fact fact : record.facts()) {
            if (!fact.stamp().recordedAt().isAfter(car.knownAt())) {
                Causes.told(fact).forEach(cause -> answered.add(cause.recordId()));
            }
        }
        return record.corrections().stream()
                .filter(correction -> !correction.recordedAt().isAfter(car.knownAt()))
                .filter(correction -> !correction.recordedAt().isAfter(car.effectiveAt()))
                .filter(correction -> !answered.contains(correction.id()))
                .filter(correction -> car.lines().stream()
                        .anyMatch(line -> line.hasEffect()
                                && correction.partSpecId().equals(line.fitted().partSpecId())
                                && line.knownSince() != null
                                && line.knownSince().isBefore(correction.recordedAt())))
                .toList();
    }
}
