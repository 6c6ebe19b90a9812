package org.bayhold.drives;

import static org.assertj.core.api.Assertions.assertThat;
import static org.mockito.Mockito.mock;
import static org.mockito.Mockito.when;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Objects;
import java.util.UUID;
import java.util.concurrent.CountDownLatch;
import java.util.function.Function;
import java.util.function.LongConsumer;
import org.bayhold.refusal.Code;
import org.bayhold.refusal.Refusal;
import org.bayhold.support.Eventually;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Logs that are judged while nobody waits. */
class LogJobsTest {
    private static final UUID CAR = new UUID(1, 1);
    private static final Instant MORNING = Instant.parse("2026-11-02T08:00:00Z");
    private static final long BYTES = 200;

    private final Clock clock = mock(Clock.class);
    private final DriveLogView view = mock(DriveLogView.class);
    private final LogJobs jobs = new LogJobs(clock);

    @BeforeEach
    void itIsMorning() {
        when(clock.instant()).thenReturn(MORNING);
    }

    @AfterEach
    void stop() {
        jobs.destroy();
    }

    private UUID begin(Function<LongConsumer, DriveLogView> work) {
        return jobs.begin(CAR, "/cars/1/drive-log", BYTES, work);
    }

    private LogJobs.Progress progress(UUID job) {
        return jobs.progress(job).orElseThrow();
    }

    private Refusal refusalOf(UUID job) {
        Eventually.holds(() -> assertThat(progress(job).refusal()).isNotNull());
        return Objects.requireNonNull(progress(job).refusal());
    }

    private void isDone(UUID job) {
        Eventually.holds(() -> assertThat(progress(job).view()).isSameAs(view));
    }

    @Test
    void howFarAJobIsIsToldUntilItIsDone() {
        CountDownLatch goOn = new CountDownLatch(1);
        UUID job = begin(told -> {
            told.accept(BYTES / 2);
            waitFor(goOn);
            told.accept(BYTES);
            return view;
        });

        Eventually.holds(() -> assertThat(progress(job).percent()).isEqualTo(50));
        assertThat(progress(job).view()).isNull();
        assertThat(progress(job).vehicleId()).isEqualTo(CAR);
        assertThat(progress(job).from()).isEqualTo("/cars/1/drive-log");

        goOn.countDown();
        isDone(job);
        assertThat(progress(job).percent()).isEqualTo(100);
    }

    @Test
    void aRefusalIsKeptForWhoeverAsks() {
        Refusal refused = Refusal.conflict("file", "drive-log.one-drive", MORNING);

        UUID job = begin(told -> {
            throw refused;
        });

        assertThat(refusalOf(job)).isSameAs(refused);
    }

    @Test
    void aFailureIsARefusalToo() {
        UUID job = begin(told -> {
            throw new IllegalStateException("the disk is gone");
        });

        assertThat(refusalOf(job).code()).isEqualTo(Code.INTERNAL);
    }

    @Test
    void whatWasDoneAnHourAgoIsForgottenAndWhatIsNotDoneIsNot() {
        CountDownLatch goOn = new CountDownLatch(1);
        UUID done = begin(told -> view);
        UUID slow = begin(told -> {
            waitFor(goOn);
            return view;
        });
        isDone(done);

        when(clock.instant()).thenReturn(MORNING.plus(Duration.ofMinutes(61)));
        UUID next = begin(told -> view);

        assertThat(jobs.progress(done)).isEmpty();
        assertThat(jobs.progress(slow)).isPresent();
        goOn.countDown();
        isDone(slow);
        isDone(next);
    }

    @Test
    void nobodyRemembersAnUnknownOne() {
        assertThat(jobs.progress(UUID.randomUUID())).isEmpty();
    }

    private static void waitFor(CountDownLatch latch) {
        try {
            latch.await();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }
}
