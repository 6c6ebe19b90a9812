package org.bayhold.support;

import java.util.concurrent.atomic.AtomicInteger;

/** Numbers that no other test has, and what is made of them. */
final class Numbers {
    private static final AtomicInteger LAST = new AtomicInteger();

    private Numbers() {}

    static String ecuHardware() {
        return "HW-%06d".formatted(LAST.incrementAndGet());
    }

    static String partNumber() {
        return "PN-%06d".formatted(LAST.incrementAndGet());
    }

    static String name() {
        return "Map %06d".formatted(LAST.incrementAndGet());
    }

    static String calid() {
        return "BENCH%06dAA".formatted(LAST.incrementAndGet());
    }

    static String cvn() {
        return "%08X".formatted(0x5A000000 + LAST.incrementAndGet());
    }

    static String sha256() {
        return "%064x".formatted(0xB000000 + LAST.incrementAndGet());
    }
}
