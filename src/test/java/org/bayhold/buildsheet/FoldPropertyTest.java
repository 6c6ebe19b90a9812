package org.bayhold.buildsheet;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.UUID;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.LongStream;
import org.bayhold.buildsheet.RandomHistories.History;
import org.bayhold.buildsheet.RandomHistories.Moments;
import org.bayhold.journal.Personal;
import org.junit.jupiter.api.Test;

/** What holds of the fold for every history. A failure names the seed: {@code RandomHistories.of(seed)} gives it again. */
class FoldPropertyTest {
    private static final int HISTORIES = 2_000;
    private static final int QUESTIONS = 20;
    private static final Personal REASON = new Personal(new UUID(9, 9), "00");

    @Test
    void theFoldAnswersAsASearchOfTheWholeRecordDoes() {
        for (History history : histories(HISTORIES)) {
            for (Moments when : RandomHistories.questions(history, QUESTIONS)) {
                assertThat(Answers.folded(history, when).differencesFrom(Answers.searched(history, when)))
                        .as(() -> at(history, when))
                        .isEmpty();
            }
        }
    }

    @Test
    void theOrderInWhichFactsAreGivenChangesNothing() {
        for (History history : histories(300)) {
            List<Fact> shuffled = new ArrayList<>(history.facts());
            Collections.shuffle(shuffled, new Random(history.seed()));
            for (Moments when : RandomHistories.questions(history, 5)) {
                assertThat(history.with(shuffled).fold(when))
                        .as(() -> at(history, when))
                        .isEqualTo(history.fold(when));
            }
        }
    }

    /**
     * Two facts, recorded one right after the other, could as well have been recorded the other way round: whoever asks
     * what was known before both or after both gets the same state, the times of recording themselves apart. This holds
     * unless the record itself makes the order matter; {@link Neighbours} says when.
     */
    @Test
    void theOrderOfRecordingChangesNothingButBetweenFactsThatMeet() {
        int exchanged = 0;
        for (History history : histories(500)) {
            for (int i = 0; i + 1 < history.facts().size(); i++) {
                Neighbours pair =
                        new Neighbours(history.facts().get(i), history.facts().get(i + 1));
                if (!pair.areIndependent(history.revisions())) {
                    continue;
                }
                exchanged++;
                History other = history.with(pair.exchangedIn(history.facts()));
                for (Moments when : RandomHistories.questions(history, 3)) {
                    if (!pair.isBetween(when.knownAt())) {
                        assertThat(Neighbours.withoutRecording(other.fold(when)))
                                .as(() -> at(history, when) + ", " + pair)
                                .isEqualTo(Neighbours.withoutRecording(history.fold(when)));
                    }
                }
            }
        }
        assertThat(exchanged).isGreaterThan(2_000);
    }

    /** The retune item is left out: a closed item is never reopened, and a struck-out cause is still told of. */
    @Test
    void aStrikingOutRemovesExactlyItsFact() {
        for (History history : histories(300)) {
            Set<UUID> struck = ofKind(history, Fact.Voided.class).stream()
                    .map(Fact.Voided::targetId)
                    .collect(Collectors.toSet());
            Fact last = history.facts().get(history.facts().size() - 1);
            Instant later = last.stamp().recordedAt().plus(Duration.ofMinutes(1));
            for (Fact target : history.facts()) {
                if (struck.contains(target.stamp().id())) {
                    continue;
                }
                Fact.Voided strike = new Fact.Voided(
                        new Stamp(
                                new UUID(history.seed(), 1),
                                target.stamp().vehicleId(),
                                last.stamp().seq() + 1,
                                later,
                                later,
                                new UUID(8, 1)),
                        target.stamp().id(),
                        REASON,
                        null);
                List<Fact> withBoth = new ArrayList<>(history.facts());
                withBoth.add(strike);
                for (Moments when : RandomHistories.questions(history, 2)) {
                    Moments known = new Moments(when.effectiveAt(), later);
                    assertThat(withoutItem(history.with(withBoth).fold(known)))
                            .as(() -> at(history, known) + ", struck out " + target)
                            .isEqualTo(
                                    withoutItem(without(history, target::equals).fold(known)));
                    Moments before =
                            new Moments(when.effectiveAt(), last.stamp().recordedAt());
                    assertThat(history.with(withBoth).fold(before)).isEqualTo(history.fold(before));
                }
            }
        }
    }

    /** Voids and retune items are left in: they count from when they were recorded, or from when their causes hold. */
    @Test
    void whatHappenedAfterTheMomentAskedAboutChangesNothing() {
        for (History history : histories(300)) {
            for (Moments when : RandomHistories.questions(history, 5)) {
                History cut = without(
                        history,
                        fact -> fact.stamp().effectiveAt().isAfter(when.effectiveAt())
                                && !(fact instanceof Fact.Voided
                                        || fact instanceof Fact.RetuneOpened
                                        || fact instanceof Fact.RetuneJoined
                                        || fact instanceof Fact.RetuneLapsed));
                assertThat(cut.fold(when)).as(() -> at(history, when)).isEqualTo(history.fold(when));
            }
        }
    }

    @Test
    void whatWasRecordedAfterTheMomentOfKnowingChangesNothing() {
        for (History history : histories(300)) {
            for (Moments when : RandomHistories.questions(history, 5)) {
                Instant then = when.knownAt();
                History known =
                        without(history, fact -> fact.stamp().recordedAt().isAfter(then));
                History cut = new History(
                        history.seed(),
                        history.registration(),
                        known.facts(),
                        history.revisions().stream()
                                .filter(revision -> !revision.recordedAt().isAfter(then))
                                .toList(),
                        history.moves().stream()
                                .filter(move -> !move.recordedAt().isAfter(then))
                                .toList());
                assertThat(cut.fold(when)).as(() -> at(history, when)).isEqualTo(history.fold(when));
            }
        }
    }

    private static List<History> histories(int count) {
        return LongStream.range(0, count).mapToObj(RandomHistories::of).toList();
    }

    private static String at(History history, Moments when) {
        return "history " + history.seed() + " at " + when;
    }

    private static History without(History history, Predicate<Fact> left) {
        return history.with(history.facts().stream().filter(left.negate()).toList());
    }

    private static <T extends Fact> List<T> ofKind(History history, Class<T> kind) {
        return history.facts().stream().filter(kind::isInstance).map(kind::cast).toList();
    }

    private static CarState withoutItem(CarState car) {
        return new CarState(
                car.effectiveAt(),
                car.knownAt(),
                car.registration(),
                car.lines(),
                car.ecuHardware(),
                car.inEcu(),
                car.neverFlashed(),
                car.changes(),
                car.readBacks(),
                car.driveLogs(),
                car.acknowledgements(),
                car.handoffs(),
                car.clearances(),
                Optional.empty(),
                car.stay());
    }
}
