package org.bayhold.acceptance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bayhold.support.Facts.aCar;
import static org.bayhold.support.Facts.fit;
import static org.bayhold.support.Facts.hoursAgo;
import static org.bayhold.support.Facts.refitFactory;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.bayhold.support.Answer;
import org.bayhold.support.Car;
import org.bayhold.support.OnADatabase;
import org.bayhold.support.Role;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import tools.jackson.databind.JsonNode;

/** {@code docs/rules.md}, rule 8: the time at which it happened and the time at which it was recorded. */
public abstract class Rule8Recording implements OnADatabase {
    private Car car;

    @BeforeEach
    void aFactoryCar() {
        car = shop().registers(aCar());
    }

    @Test
    void aFactWithoutATimeHappenedWhenItWasRecorded() {
        Instant before = Instant.now().minusSeconds(1);

        Answer change = car.fits(shop().aPartFor("AIR_INTAKE"));

        assertThat(change.field("effectiveAt")).isEqualTo(change.field("recordedAt"));
        assertThat(recordedAt(change)).isBetween(before, Instant.now().plusSeconds(1));
    }

    @Test
    void aFactMayBeRecordedLateAndKeepsBothTimes() {
        Instant dayBefore = hoursAgo(26);

        Answer change = car.changes(fit(shop().aPartFor("AIR_INTAKE")).at(dayBefore));

        assertThat(effectiveAt(change)).isEqualTo(dayBefore);
        assertThat(recordedAt(change)).isAfter(dayBefore.plus(Duration.ofHours(25)));
        JsonNode record = car.record(change.id()).orElseThrow();
        assertThat(Instant.parse(Answer.textOf(record.path("effectiveAt")))).isEqualTo(dayBefore);
        assertThat(Answer.textOf(record.path("recordedAt"))).isEqualTo(change.field("recordedAt"));
        assertThat(Answer.textOf(record.path("by"))).isNotBlank();
    }

    @Test
    void aClockALittleAheadIsTakenAsNow() {
        Answer change =
                car.changes(fit(shop().aPartFor("AIR_INTAKE")).at(Instant.now().plusSeconds(45)));

        assertThat(change.field("effectiveAt")).isEqualTo(change.field("recordedAt"));
        assertThat(effectiveAt(change)).isBefore(Instant.now().plusSeconds(2));
    }

    @Test
    void aTimeFurtherAheadIsRefused() {
        int before = car.history().size();

        shop().as(Role.WRITER)
                .post(
                        car.path("part-changes"),
                        refitFactory("AIR_INTAKE").at(Instant.now().plusSeconds(75)))
                .isInvalid("effectiveAt");

        assertThat(car.history()).hasSize(before);
        assertThat(car.findOpenItem()).isEmpty();
    }

    @Test
    void timesOfRecordingRiseStrictlyWhateverTheTimesOfTheFacts() {
        List<Instant> recorded = new ArrayList<>();
        for (int i = 0; i < 10; i++) {
            recorded.add(recordedAt(car.changes(refitFactory("AIR_INTAKE").at(hoursAgo(i % 3)))));
        }

        assertThat(recorded).isSorted().doesNotHaveDuplicates();
    }

    @Test
    void thePolicyCanNotBeDatedBackByAReplay() {
        Car finished = shop().finishesACar().car();
        Instant whileAskedFor = Instant.now().minusMillis(1);

        shop().whilePolicySays("acknowledgementRequired", false, () -> {
            assertThat(finished.gate().outcome("CUSTOMER_ACKNOWLEDGED")).isEqualTo("NOT_REQUIRED");
            assertThat(finished.gate(whileAskedFor, Instant.now()).outcome("CUSTOMER_ACKNOWLEDGED"))
                    .isNotEqualTo("NOT_REQUIRED");
        });
    }

    private static Instant effectiveAt(Answer answer) {
        return Instant.parse(answer.field("effectiveAt"));
    }

    private static Instant recordedAt(Answer answer) {
        return Instant.parse(answer.field("recordedAt"));
    }
}
