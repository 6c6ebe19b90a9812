package org.bayhold.drives;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.Function;
import java.util.function.LongConsumer;
import org.bayhold.journal.Ids;
import org.bayhold.refusal.Code;
import org.bayhold.refusal.Refusal;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.beans.factory.DisposableBean;
import org.springframework.stereotype.Component;

/**
 * Logs that are being judged while nobody waits for them. They go on when the browser is closed; a server that stops forgets
 * them, and the file waits to be sent again.
 */
@Component
class LogJobs implements DisposableBean {
    private static final Logger LOG = LoggerFactory.getLogger(LogJobs.class);
    private static final int AT_ONCE = 2;
    private static final Duration REMEMBERED = Duration.ofHours(1);

    private final ExecutorService workers = Executors.newFixedThreadPool(AT_ONCE, LogJobs::thread);
    private final Map<UUID, Job> jobs = new ConcurrentHashMap<>();
    private final Clock clock;

    LogJobs(Clock clock) {
        this.clock = clock;
    }

    private static Thread thread(Runnable work) {
        Thread thread = new Thread(work, "judging-logs");
        thread.setDaemon(true);
        return thread;
    }

    /**
     * How far a job is.
     *
     * @param from the page to go back to where it was refused
     * @param bytes of the file
     * @param view what was put on record; null as long as it is not
     * @param refusal why it was not; null where nothing is wrong
     */
    record Progress(
            UUID vehicleId,
            String from,
            long bytes,
            long judged,
            @Nullable DriveLogView view,
            @Nullable Refusal refusal) {
        /** Judged so far, of the file. Used by templates. */
        public long percent() {
            return bytes == 0 ? 0 : Math.min(100, judged * 100 / bytes);
        }
    }

    private static final class Job {
        final UUID vehicleId;
        final String from;
        final long bytes;
        final Instant begunAt;
        final AtomicLong judged = new AtomicLong();
        volatile @Nullable DriveLogView view;
        volatile @Nullable Refusal refusal;

        Job(UUID vehicleId, String from, long bytes, Instant begunAt) {
            this.vehicleId = vehicleId;
            this.from = from;
            this.bytes = bytes;
            this.begunAt = begunAt;
        }
    }

    /** @param work judges, tells how many bytes are judged, and puts on record */
    UUID begin(UUID vehicleId, String from, long bytes, Function<LongConsumer, DriveLogView> work) {
        Instant now = clock.instant();
        jobs.values().removeIf(job -> job.begunAt.isBefore(now.minus(REMEMBERED)) && done(job));
        UUID id = Ids.next();
        Job job = new Job(vehicleId, from, bytes, now);
        jobs.put(id, job);
        workers.execute(() -> run(job, work));
        return id;
    }

    private static boolean done(Job job) {
        return job.view != null || job.refusal != null;
    }

    private static void run(Job job, Function<LongConsumer, DriveLogView> work) {
        try {
            job.view = work.apply(job.judged::set);
        } catch (Refusal refusal) {
            job.refusal = refusal;
        } catch (RuntimeException failed) {
            LOG.error("a log was not judged", failed);
            job.refusal = Refusal.of(Code.INTERNAL, "drive-log.failed");
        }
    }

    /** Empty where nobody remembers it. */
    Optional<Progress> progress(UUID id) {
        return Optional.ofNullable(jobs.get(id))
                .map(job -> new Progress(job.vehicleId, job.from, job.bytes, job.judged.get(), job.view, job.refusal));
    }

    /** Never interrupted: a thread may be inside the database. */
    @Override
    public void destroy() {
        workers.shutdown();
    }
}
