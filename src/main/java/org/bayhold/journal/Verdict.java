package org.bayhold.journal;

import org.jspecify.annotations.Nullable;

/**
 * What a verification of the whole record found.
 *
 * @param entries how many entries were found in order; all of them where the record is intact
 * @param firstBroken the first place that does not hold, chain by chain; what follows it was not looked at
 */
public record Verdict(
        long entries, boolean intact, @Nullable BrokenEntry firstBroken) {
    static Verdict intact(long entries) {
        return new Verdict(entries, true, null);
    }

    static Verdict broken(long entries, BrokenEntry first) {
        return new Verdict(entries, false, first);
    }
}
