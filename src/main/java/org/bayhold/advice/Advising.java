package org.bayhold.advice;

import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.stream.Stream;
import org.bayhold.advice.AdviceBody.Named;
import org.bayhold.advice.AdviceBody.Near;
import org.bayhold.advice.Covering.Candidate;
import org.bayhold.advice.Reasoning.Reasoned;
import org.bayhold.catalog.BenefitNote;
import org.bayhold.catalog.Catalog;
import org.bayhold.gate.Comparisons;
import org.bayhold.gate.Comparisons.Comparison;
import org.bayhold.prediction.Build;
import org.bayhold.prediction.Risk;
import org.bayhold.refusal.Refusal;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/** Answers a question. Nothing is recorded by it. */
@Component
class Advising {
    private final WhatIf whatIf;
    private final Comparisons comparisons;
    private final Covering covering;
    private final Catalog catalog;
    private final AdviceWords words;

    Advising(WhatIf whatIf, Comparisons comparisons, Covering covering, Catalog catalog, AdviceWords words) {
        this.whatIf = whatIf;
        this.comparisons = comparisons;
        this.covering = covering;
        this.catalog = catalog;
        this.words = words;
    }

    /**
     * An answer.
     *
     * @param build what its prediction was worked out from
     */
    record Advised(AdviceBody body, @Nullable UUID vehicleId, Build build) {}

    /** @throws Refusal where the question names what is not there, or does not say what it is about */
    @Transactional(readOnly = true)
    public Advised answer(AdviceRequest question) {
        Hypothesis car = whatIf.of(question);
        Comparison comparison = comparisons.of(car.after(), car.revision(), car.groups());
        Reasoned reasoned = Reasoning.of(car, comparison.gaps());
        Risk risk = Cautions.riskOf(comparison);
        List<Candidate> candidates = covering.of(car);
        AdviceBody body = new AdviceBody(
                reasoned.answer(),
                risk,
                car.after().ecuHardware(),
                Software.of(car),
                car.revision().map(Named::of).orElse(null),
                car.needsAFlash(),
                car.proposals().stream().map(AdviceBody.Change::of).toList(),
                words.all(reasoned.reasons()),
                comparisons.mismatches(comparison.gaps()),
                comparison.prediction().map(comparisons::view).orElse(null),
                candidates.stream()
                        .filter(candidate -> candidate.gaps().isEmpty())
                        .map(candidate -> Named.of(candidate.revision()))
                        .toList(),
                candidates.stream()
                        .filter(candidate -> !candidate.gaps().isEmpty())
                        .map(candidate ->
                                new Near(Named.of(candidate.revision()), comparisons.mismatches(candidate.gaps())))
                        .toList(),
                words.all(SecondThoughts.of(car, reasoned.answer(), risk, notes(car))),
                words.all(cautions(car, reasoned.answer(), comparison)));
        return new Advised(body, car.vehicleId(), comparison.build());
    }

    private List<BenefitNote> notes(Hypothesis car) {
        return catalog.benefitNotes(car.proposals().stream()
                .flatMap(proposal -> Stream.ofNullable(proposal.part()))
                .map(part -> part.id())
                .toList());
    }

    /** An exemption of a part is said with the law that it is exempted from. */
    private static List<Why> cautions(Hypothesis car, Answer answer, Comparison comparison) {
        List<Why> cautions = new ArrayList<>(Cautions.of(car, answer, comparison));
        car.proposals().stream()
                .flatMap(proposal -> Stream.ofNullable(proposal.part()))
                .filter(part -> part.complianceNote() != null)
                .forEach(part -> cautions.add(Why.of("advice.caution.exemption", part, part.complianceNote())));
        return cautions;
    }
}
