package org.bayhold.buildsheet;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.stream.LongStream;
import org.bayhold.buildsheet.RandomHistories.History;
import org.bayhold.buildsheet.RandomHistories.Moments;
import org.junit.jupiter.api.Test;

/** A walk stops at the same car as a fold of its own for each moment. */
class CarWalkTest {
    private static final Instant LATER = RandomHistories.START.plusSeconds(30L * 86_400);

    @Test
    void aWalkThroughEveryMomentIsAFoldAtEach() {
        LongStream.range(0, 500).mapToObj(RandomHistories::of).forEach(history -> {
            CarWalk walk = new CarWalk(history.record(), LATER);
            for (Instant moment : walk.moments()) {
                assertThat(walk.to(moment))
                        .as("history %s at %s", history.seed(), moment)
                        .isEqualTo(history.fold(new Moments(moment, LATER)));
            }
        });
    }

    @Test
    void aWalkMayGoBackAndLeaveMomentsOut() {
        LongStream.range(0, 300).mapToObj(RandomHistories::of).forEach(history -> {
            for (Moments known : RandomHistories.questions(history, 3)) {
                CarWalk walk = new CarWalk(history.record(), known.knownAt());
                for (Instant moment : somewhere(history)) {
                    assertThat(walk.to(moment))
                            .as("history %s at %s, known at %s", history.seed(), moment, known.knownAt())
                            .isEqualTo(history.fold(new Moments(moment, known.knownAt())));
                }
            }
        });
    }

    /** Between two of its moments nothing changes: whoever looks at those has seen everything. */
    @Test
    void betweenItsMomentsNothingChanges() {
        for (History history :
                LongStream.range(0, 200).mapToObj(RandomHistories::of).toList()) {
            CarWalk walk = new CarWalk(history.record(), LATER);
            List<Instant> moments = new ArrayList<>(walk.moments());
            for (int i = 1; i < moments.size(); i++) {
                CarState at = walk.to(moments.get(i - 1));
                CarState justBefore = walk.to(moments.get(i).minusNanos(1_000));
                assertThat(justBefore.lines()).isEqualTo(at.lines());
                assertThat(justBefore.inEcu()).isEqualTo(at.inEcu());
                assertThat(justBefore.changes()).isEqualTo(at.changes());
            }
        }
    }

    private static List<Instant> somewhere(History history) {
        List<Instant> moments = new ArrayList<>();
        RandomHistories.questions(history, 8).forEach(when -> moments.add(when.effectiveAt()));
        Collections.shuffle(moments, new Random(history.seed()));
        return moments;
    }
}
