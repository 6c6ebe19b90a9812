package org.bayhold.refusal;

import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Entity tags (RFC 9110) made of a record's version. */
public final class ETags {
    private ETags() {}

    public static String of(long version) {
        return "\"" + version + "\"";
    }

    /**
     * The version that a change was made for; empty for {@code *}, which holds for any.
     *
     * @throws Refusal PRECONDITION_REQUIRED where the header is missing, STALE where it can be no tag of ours
     */
    public static Optional<Long> required(@Nullable String ifMatch) {
        if (ifMatch == null || ifMatch.isBlank()) {
            throw Refusal.of(Code.PRECONDITION_REQUIRED, "problem.precondition-required");
        }
        String tag = ifMatch.strip();
        if (tag.equals("*")) {
            return Optional.empty();
        }
        if (!tag.matches("\"\\d{1,18}\"")) {
            throw Refusal.of(Code.STALE, "problem.stale");
        }
        return Optional.of(Long.parseLong(tag.substring(1, tag.length() - 1)));
    }
}
