package org.bayhold.race;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import org.bayhold.support.Seed;

/** Sixteen people who begin at the same moment. What each decides to do comes from the seed; who is first does not. */
final class Crowd implements AutoCloseable {
    static final int PEOPLE = 16;

    private final ExecutorService people = Executors.newFixedThreadPool(PEOPLE);
    private final Random seeds;

    Crowd() {
        seeds = new Random(Seed.OF_THIS_RUN);
    }

    void allAtOnce(Consumer<Random> work) {
        CyclicBarrier together = new CyclicBarrier(PEOPLE);
        List<Future<?>> all = new ArrayList<>();
        for (int i = 0; i < PEOPLE; i++) {
            Random random = new Random(seeds.nextLong());
            all.add(people.submit(() -> {
                together.await(30, TimeUnit.SECONDS);
                work.accept(random);
                return null;
            }));
        }
        for (Future<?> one : all) {
            try {
                one.get(5, TimeUnit.MINUTES);
            } catch (ExecutionException e) {
                throw new IllegalStateException("somebody could not work", e.getCause());
            } catch (InterruptedException | java.util.concurrent.TimeoutException e) {
                throw new IllegalStateException("somebody did not come to an end", e);
            }
        }
    }

    @Override
    public void close() {
        people.shutdown();
    }
}
