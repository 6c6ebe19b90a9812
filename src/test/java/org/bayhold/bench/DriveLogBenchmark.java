package org.bayhold.bench;

import static org.assertj.core.api.Assertions.assertThat;

import de.siegmar.fastcsv.reader.AbstractBaseCsvCallbackHandler;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Locale;
import org.bayhold.drivelog.DriveLogs;
import org.bayhold.drivelog.EngineFacts;
import org.bayhold.drivelog.Judgement;
import org.bayhold.drivelog.MadeLog;
import org.bayhold.drivelog.ReadRequest;
import org.bayhold.drivelog.RefusedLogException;
import org.bayhold.drivelog.Thresholds;
import org.junit.jupiter.api.Test;

/** Judging a log beside merely reading it with the CSV library, and what a long one needs of the heap: docs/benchmarks.md. */
class DriveLogBenchmark {
    private static final int MEGABYTES = Integer.getInteger("bayhold.bench.megabytes", 64);
    private static final int LONG_MEGABYTES = Integer.getInteger("bayhold.bench.long-megabytes", 1_024);
    private static final int ROUNDS = Integer.getInteger("bayhold.bench.rounds", 15);
    private static final int WARMING = 5;
    private static final long LOOK_MILLIS = 300;
    private static final MadeLog LOG = new MadeLog(1, 20);

    /** What every field is handed to and nothing is made of: the library alone, with no text made. */
    private static final class Dropping extends AbstractBaseCsvCallbackHandler<Boolean> {
        @Override
        protected Boolean buildRecord() {
            return Boolean.TRUE;
        }
    }

    @Test
    void judgingBesideABarePass() throws IOException, RefusedLogException {
        byte[] file;
        try (InputStream log = LOG.stream((long) MEGABYTES << 20)) {
            file = log.readAllBytes();
        }
        double[] besideRecords = new double[ROUNDS];
        double[] besideDropped = new double[ROUNDS];
        for (int round = -WARMING; round < ROUNDS; round++) {
            double records = records(file);
            double dropped = dropped(file);
            double judged = judged(file);
            if (round >= 0) {
                besideRecords[round] = records / judged;
                besideDropped[round] = dropped / judged;
                say(
                        "round %d, %d MB: records %.2f s, dropped fields %.2f s, judged %.2f s; ratios %.2f, %.2f",
                        round + 1, MEGABYTES, records, dropped, judged, besideRecords[round], besideDropped[round]);
            }
        }
        say("median ratios %.2f, %.2f", median(besideRecords), median(besideDropped));
    }

    static double median(double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        return sorted[sorted.length / 2];
    }

    private static double records(byte[] file) throws IOException {
        long begin = System.nanoTime();
        long fields = 0;
        try (CsvReader<CsvRecord> reader = CsvReader.builder().ofCsvRecord(text(file))) {
            for (CsvRecord row : reader) {
                fields += row.getFieldCount();
            }
        }
        assertThat(fields).isPositive();
        return since(begin);
    }

    private static double dropped(byte[] file) throws IOException {
        long begin = System.nanoTime();
        long rows = 0;
        try (CsvReader<Boolean> reader = CsvReader.builder().build(new Dropping(), text(file))) {
            for (Boolean row : reader) {
                rows += row ? 1 : 0;
            }
        }
        assertThat(rows).isPositive();
        return since(begin);
    }

    private static Reader text(byte[] file) {
        return new InputStreamReader(new ByteArrayInputStream(file), StandardCharsets.UTF_8);
    }

    private static double judged(byte[] file) throws IOException, RefusedLogException {
        long begin = System.nanoTime();
        Judgement judgement = judge(new ByteArrayInputStream(file));
        assertThat(judgement.fit()).isNotNull();
        return since(begin);
    }

    private static Judgement judge(InputStream in) throws IOException, RefusedLogException {
        return DriveLogs.judge(in, ReadRequest.PLAIN, EngineFacts.UNKNOWN, Thresholds.DEFAULTS, bytes -> {});
    }

    @Test
    void aLongLogOnASmallHeap() throws IOException, RefusedLogException {
        judge(LOG.stream(1 << 20));
        var heap = ManagementFactory.getMemoryMXBean();
        System.gc();
        long idle = heap.getHeapMemoryUsage().getUsed();
        long begin = System.nanoTime();
        HeapWatch watch = new HeapWatch(LOOK_MILLIS);
        Judgement judgement;
        try (watch;
                InputStream log = LOG.stream((long) LONG_MEGABYTES << 20)) {
            judgement = judge(log);
        }
        double took = since(begin);
        long most = (watch.most() - idle) >> 20;
        say(
                "%,d MB, %,d moments, %.0f h of driving in %.1f s; live heap %+,d MB at most",
                LONG_MEGABYTES,
                judgement.quality().moments(),
                judgement.quality().seconds() / 3_600,
                took,
                most);
        assertThat(judgement.quality().moments()).isPositive();
        assertThat(most).isLessThan(64);
    }

    private static double since(long begin) {
        return (System.nanoTime() - begin) / 1e9;
    }

    private static void say(String format, Object... values) {
        System.out.println("BENCH " + String.format(Locale.ROOT, format, values));
    }
}
