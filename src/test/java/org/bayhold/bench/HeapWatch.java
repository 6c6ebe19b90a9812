package org.bayhold.bench;

import java.lang.management.ManagementFactory;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;

/** The most that is alive on the heap while something runs: it collects garbage now and then and looks. */
final class HeapWatch implements AutoCloseable {
    private static final long USUAL_MILLIS = 5_000;

    private final long everyMillis;
    private final CountDownLatch over = new CountDownLatch(1);
    private final Thread watching = new Thread(this::watch, "heap-watch");
    private volatile long most;

    HeapWatch() {
        this(USUAL_MILLIS);
    }

    HeapWatch(long everyMillis) {
        this.everyMillis = everyMillis;
        watching.setDaemon(true);
        watching.start();
    }

    private void watch() {
        try {
            while (!over.await(everyMillis, TimeUnit.MILLISECONDS)) {
                System.gc();
                most = Math.max(
                        most,
                        ManagementFactory.getMemoryMXBean().getHeapMemoryUsage().getUsed());
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /** In bytes; 0 where it was over before the first look. */
    long most() {
        return most;
    }

    @Override
    public void close() {
        over.countDown();
    }
}
