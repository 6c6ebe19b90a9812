package org.bayhold.support;

import java.util.concurrent.ThreadLocalRandom;

/**
 * Where all made data begins. It is the same in every build, so that what passed passes again: {@code
 * -Dbayhold.test.seed=any} draws another one for the whole run, and a number repeats a run that failed.
 */
public final class Seed {
    private static final String PROPERTY = "bayhold.test.seed";

    public static final long OF_THIS_RUN = read(System.getProperty(PROPERTY, "20261125"));

    private Seed() {}

    private static long read(String wanted) {
        if (!wanted.equals("any")) {
            return Long.parseLong(wanted);
        }
        long drawn = ThreadLocalRandom.current().nextLong(1, 1L << 40);
        System.out.println(repeats(drawn));
        return drawn;
    }

    /** What repeats a case that began with this seed. */
    public static String repeats(long seed) {
        return "-D" + PROPERTY + "=" + seed;
    }
}
