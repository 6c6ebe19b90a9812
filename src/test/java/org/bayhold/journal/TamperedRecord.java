package org.bayhold.journal;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.function.Supplier;
import org.bayhold.support.EveryKindOfRecord;
import org.bayhold.support.FreshBayhold;
import org.bayhold.support.Seed;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;

/** Whatever is done to the record behind the application's back, a verification finds it, and where it begins. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
abstract class TamperedRecord {
    private static final int TAMPERINGS = 300;
    private static final int CLEAN_CHECKS = 50;

    private @Nullable FreshBayhold running;

    abstract FreshBayhold start();

    @BeforeAll
    void everythingHasHappened() {
        running = start();
        EveryKindOfRecord.in(running.shop());
    }

    @AfterAll
    void close() {
        if (running != null) {
            running.close();
        }
    }

    @Test
    void everyTamperingIsFoundAndWhereItBegins() {
        long seed = Seed.OF_THIS_RUN;
        SplittableRandom random = new SplittableRandom(seed);
        Scratch scratch = new Scratch(Objects.requireNonNull(running), 5 + random.nextInt(36));
        Tamperer tamperer = new Tamperer(scratch, random);
        long entries = scratch.verify().entries();
        List<String> missed = new ArrayList<>();
        Map<String, Integer> done = new TreeMap<>();
        long start = System.nanoTime();
        for (int i = 0; i < TAMPERINGS; i++) {
            if (i % (TAMPERINGS / CLEAN_CHECKS) == 0) {
                assertThat(scratch.verify())
                        .as("left alone, %s", Seed.repeats(seed))
                        .isEqualTo(Verdict.intact(entries));
            }
            Supplier<Tampering> way = tamperer.ways().get(i % tamperer.ways().size());
            Tampering[] tampering = new Tampering[1];
            Verdict verdict = scratch.verifyAfter(() -> tampering[0] = way.get());
            done.merge(tampering[0].what(), 1, Integer::sum);
            if (verdict.intact() || !tampering[0].isFoundAs(verdict.firstBroken())) {
                missed.add(tampering[0] + " was found as " + verdict);
            }
        }
        System.out.printf(
                "%d tamperings and %d clean checks on %d entries in %d ms: %s%n",
                TAMPERINGS, CLEAN_CHECKS, entries, (System.nanoTime() - start) / 1_000_000, done.keySet());

        assertThat(missed).as(Seed.repeats(seed)).isEmpty();
    }
}
