package org.bayhold.advice;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import org.bayhold.advice.Hypothesis.Proposal;
import org.bayhold.buildsheet.Fact.Action;
import org.bayhold.catalog.BenefitNote;
import org.bayhold.prediction.Risk;
import org.jspecify.annotations.Nullable;

/** What speaks against the part itself, whatever the calibration: that it brings nothing here, or harms, or costs an engine. */
final class SecondThoughts {
    private SecondThoughts() {}

    /** @param notes of the parts that are proposed */
    static List<Why> of(Hypothesis car, Answer answer, @Nullable Risk risk, List<BenefitNote> notes) {
        List<Why> thoughts = new ArrayList<>();
        List<Proposal> fits = car.proposals().stream()
                .filter(proposal -> proposal.action() == Action.FIT && proposal.part() != null)
                .toList();
        for (Proposal fit : fits) {
            about(fit, car, notes)
                    .forEach(note -> thoughts.add(Why.of(
                            "advice.worth." + note.effect().name(), Objects.requireNonNull(fit.part()), note.note())));
        }
        if (!fits.isEmpty()
                && fits.stream()
                        .allMatch(fit -> about(fit, car, notes).findAny().isPresent())) {
            thoughts.add(Why.of("advice.worth.leave-it"));
        }
        if (answer != Answer.COVERED && (risk == Risk.EXTREME || risk == Risk.HIGH)) {
            thoughts.add(Why.of("advice.worth.cost-of-an-engine"));
        }
        return thoughts;
    }

    private static Stream<BenefitNote> about(Proposal fit, Hypothesis car, List<BenefitNote> notes) {
        return notes.stream()
                .filter(note -> fit.part() != null
                        && note.partSpecId().equals(fit.part().id()))
                .filter(note -> note.isAbout(car.engine(), car.after().ecuHardware()));
    }
}
