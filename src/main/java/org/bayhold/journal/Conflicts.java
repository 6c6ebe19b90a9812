package org.bayhold.journal;

import java.sql.SQLException;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Which failures of the database mean that a write met another, by SQLSTATE. */
final class Conflicts {
    /**
     * Serialization failure, deadlock, lock not available, unique violation (a row that another write made between our
     * look and our insert: the second try sees it), and H2's lock time-out.
     */
    private static final Set<String> MET_ANOTHER = Set.of("40001", "40P01", "55P03", "23505", "HYT00");

    private static final Set<String> LOST = Set.of("57P01", "57P02", "57P03");

    private Conflicts() {}

    static boolean worthAnotherTry(Throwable failure) {
        String state = sqlState(failure);
        return state != null && MET_ANOTHER.contains(state);
    }

    static boolean isLostConnection(Throwable failure) {
        String state = sqlState(failure);
        return state != null && (state.startsWith("08") || LOST.contains(state));
    }

    private static @Nullable String sqlState(Throwable failure) {
        for (Throwable cause = failure; cause != null; cause = cause.getCause()) {
            if (cause instanceof SQLException sql && sql.getSQLState() != null) {
                return sql.getSQLState();
            }
        }
        return null;
    }
}
