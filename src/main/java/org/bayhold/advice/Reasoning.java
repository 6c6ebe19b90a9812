package org.bayhold.advice;

import java.util.ArrayList;
import java.util.List;
import org.bayhold.advice.Hypothesis.Proposal;
import org.bayhold.buildsheet.Coverage.Gap;
import org.bayhold.buildsheet.Fact.Action;
import org.bayhold.buildsheet.Fitted;
import org.bayhold.calibration.Purpose;
import org.bayhold.calibration.Revision;
import org.bayhold.catalog.Category;
import org.bayhold.catalog.Place;

/**
 * From a car as it might be to an answer, with the reasons. Pure. What is unknown comes first, since nobody can say what a
 * calibration does with it; after it whatever the calibration was not written for. docs/rules.md, "Advice".
 */
final class Reasoning {
    /** From here on a car's places are not named one by one. */
    private static final int ALL_OF_IT = 10;

    private final Hypothesis car;
    private final List<Gap> gaps;
    private final List<Why> against = new ArrayList<>();

    private Reasoning(Hypothesis car, List<Gap> gaps) {
        this.car = car;
        this.gaps = gaps;
    }

    /** An answer and what it rests on. */
    record Reasoned(Answer answer, List<Why> reasons) {
        Reasoned {
            reasons = List.copyOf(reasons);
        }
    }

    /** @param gaps the places at which the car as it might be is not what the calibration was written for */
    static Reasoned of(Hypothesis car, List<Gap> gaps) {
        return new Reasoning(car, gaps).reason();
    }

    private Reasoned reason() {
        List<Why> unknown = unknown();
        software();
        parts();
        List<Why> reasons = new ArrayList<>(unknown);
        reasons.addAll(against);
        if (!unknown.isEmpty()) {
            return new Reasoned(Answer.UNKNOWN_PARTS, reasons);
        }
        if (!against.isEmpty()) {
            return new Reasoned(Answer.RETUNE_FIRST, reasons);
        }
        return new Reasoned(Answer.COVERED, covered());
    }

    private List<Why> unknown() {
        List<Place> places = car.unknownPlaces();
        if (places.size() > ALL_OF_IT) {
            return List.of(Why.of("advice.reason.all-unknown"));
        }
        return places.stream()
                .map(place -> Why.of(
                        car.isProposed(place) ? "advice.reason.unknown-proposed" : "advice.reason.unknown", place))
                .toList();
    }

    private void software() {
        switch (Software.of(car)) {
            case REVISION -> car.revision().ifPresent(this::of);
            case FACTORY -> {}
            case UNKNOWN ->
                against.add(
                        car.proposals().stream()
                                        .anyMatch(proposal -> proposal.place().category() == Category.ECU)
                                ? Why.of("advice.reason.another-ecu")
                                : Why.of("advice.reason.ecu-unknown"));
            case NOT_OURS -> against.add(Why.of("advice.reason.not-ours"));
            case FAILED -> against.add(Why.of("advice.reason.flash-failed"));
        }
    }

    private void of(Revision revision) {
        if (!revision.ecuHardware().equals(car.after().ecuHardware())) {
            against.add(Why.of(
                    "advice.reason.other-hardware",
                    revision,
                    revision.ecuHardware(),
                    car.after().ecuHardware()));
        }
        if (revision.isWithdrawn(car.after().effectiveAt(), car.after().knownAt())) {
            against.add(Why.of("advice.reason.withdrawn", revision));
        }
        if (revision.purpose() == Purpose.TRANSFER) {
            against.add(Why.of("advice.reason.transfer", revision));
        }
    }

    private void parts() {
        for (Proposal proposal : car.proposals()) {
            if (proposal.action() == Action.ADJUST && car.hasEffect(proposal.place())) {
                against.add(Why.of("advice.reason.adjusted", proposal.place()));
            }
        }
        gaps.stream()
                .filter(gap -> gap.fitted().state() != Fitted.State.UNKNOWN)
                .sorted((a, b) -> Boolean.compare(car.isProposed(b.place()), car.isProposed(a.place())))
                .forEach(gap -> against.add(Why.of(
                        (car.isProposed(gap.place()) ? "advice.reason.proposed." : "advice.reason.already.")
                                + gap.why().name(),
                        gap.place())));
    }

    private List<Why> covered() {
        List<Why> reasons = new ArrayList<>();
        List<Proposal> felt = car.proposals().stream()
                .filter(proposal -> car.hasEffect(proposal.place()))
                .toList();
        if (felt.isEmpty() && !car.proposals().isEmpty()) {
            reasons.add(Why.of("advice.reason.no-effect"));
        }
        reasons.add(car.revision()
                .map(revision -> Why.of("advice.reason.covered", revision))
                .orElseGet(() -> Why.of("advice.reason.covered-factory")));
        car.revision()
                .filter(revision -> revision.purpose() == Purpose.RUN_IN)
                .ifPresent(revision -> reasons.add(Why.of("advice.reason.run-in", revision)));
        if (car.needsAFlash()) {
            reasons.add(Why.of("advice.reason.flash-first"));
        } else if (!felt.isEmpty()) {
            reasons.add(Why.of(
                    felt.stream().anyMatch(car::changesNothing)
                            ? "advice.reason.same-again"
                            : "advice.reason.still-opens"));
        }
        return reasons;
    }
}
