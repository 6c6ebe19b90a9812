package org.bayhold.audit;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.function.LongFunction;
import java.util.stream.LongStream;
import org.bayhold.buildsheet.CarRecord;
import org.bayhold.buildsheet.Fact;
import org.bayhold.buildsheet.RandomHistories;
import org.bayhold.gate.Check;
import org.bayhold.gate.Decision;
import org.bayhold.gate.Replay;
import org.bayhold.gate.Replaying;
import org.bayhold.prediction.Risk;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** Walking through a car once comes to what rule 13 says with a fold of its own for every moment. */
class JudgingPropertyTest {
    private static final Replay GATE = Replaying.underTheUsualPolicy();

    /** What came up, so that a test that saw nothing of the matter does not pass for one that did. */
    private static final class Seen {
        private final Set<Finding> findings = EnumSet.noneOf(Finding.class);
        private int handoffs;
        private int heldByCodes;
        private int underOtherRules;
        private int matchedAgain;
        private int back;
        private int still;

        void see(Judged handoff) {
            findings.addAll(handoff.findings());
            handoffs++;
            heldByCodes += handoff.knownThen().fails(Check.NO_RELATED_TROUBLE_CODES) ? 1 : 0;
            underOtherRules += handoff.knownThen().rules() == handoff.knownNow().rules() ? 0 : 1;
            matchedAgain += handoff.matchedAgainAt() == null ? 0 : 1;
            back += handoff.returnedAt() == null ? 0 : 1;
            still += handoff.stillSince() == null ? 0 : 1;
        }
    }

    @Test
    void onHistoriesThatAShopMayHave() {
        Seen seen = compare(1_000, LikelyHistories::of);

        assertThat(seen.findings).containsExactlyInAnyOrder(Finding.values());
        assertThat(seen.handoffs).isGreaterThan(5_000);
        assertThat(seen.matchedAgain).isGreaterThan(300);
        assertThat(seen.back).isGreaterThan(1_000);
        assertThat(seen.heldByCodes).isGreaterThan(200);
        assertThat(seen.underOtherRules).isGreaterThan(1_000);
        assertThat(seen.still).isGreaterThan(300);
    }

    @Test
    void onHistoriesThatHoldWhatNoShopWouldDo() {
        Seen seen = compare(1_000, seed -> RandomHistories.of(seed).record());

        assertThat(seen.handoffs).isGreaterThan(1_000);
        assertThat(seen.still).isGreaterThan(50);
    }

    private static Seen compare(int histories, LongFunction<CarRecord> history) {
        Seen seen = new Seen();
        for (long seed : LongStream.range(0, histories).toArray()) {
            CarRecord record = history.apply(seed);
            Instant last = record.facts().get(record.facts().size() - 1).stamp().recordedAt();
            for (Instant now : List.of(last, last.plusSeconds(86_400), middle(record))) {
                List<Judged> handoffs = Judging.of(record, GATE, now);
                List<Judged> plain = PlainAudit.of(record, GATE, now);
                assertThat(handoffs.stream().map(JudgingPropertyTest::withoutThen))
                        .as("history %s as of %s", seed, now)
                        .isEqualTo(plain.stream()
                                .map(JudgingPropertyTest::withoutThen)
                                .toList());
                assertThat(handoffs.stream().map(Judged::knownThen).map(JudgingPropertyTest::said))
                        .as("history %s as of %s", seed, now)
                        .isEqualTo(plain.stream()
                                .map(Judged::knownThen)
                                .map(JudgingPropertyTest::said)
                                .toList());
                handoffs.forEach(seen::see);
            }
        }
        return seen;
    }

    private static Judged withoutThen(Judged judged) {
        return new Judged(
                judged.handoff(),
                judged.voided(),
                judged.knownNow(),
                judged.knownNow(),
                judged.findings(),
                judged.returnedAt(),
                judged.unmatchedSince(),
                judged.matchedAgainAt(),
                judged.unmatchedFor(),
                judged.stillSince());
    }

    /** All of a decision but the moment of knowing, which it does not depend on. */
    private record Said(
            int rules,
            Instant effectiveAt,
            Decision.Verdict verdict,
            @Nullable Risk risk,
            List<?> checks,
            List<?> mismatches) {}

    private static Said said(Decision decision) {
        return new Said(
                decision.rules(),
                decision.effectiveAt(),
                decision.verdict(),
                decision.risk(),
                decision.checks(),
                decision.mismatches());
    }

    private static Instant middle(CarRecord record) {
        List<Fact> facts = record.facts();
        return facts.get(facts.size() / 2).stamp().recordedAt();
    }
}
