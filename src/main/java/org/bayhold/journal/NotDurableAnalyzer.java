package org.bayhold.journal;

import org.springframework.boot.diagnostics.AbstractFailureAnalyzer;
import org.springframework.boot.diagnostics.FailureAnalysis;

/** Says in plain words why the application does not start. */
final class NotDurableAnalyzer extends AbstractFailureAnalyzer<NotDurableException> {
    @Override
    protected FailureAnalysis analyze(Throwable rootFailure, NotDurableException cause) {
        return new FailureAnalysis(
                cause.getMessage() + ".",
                "Switch it on: in postgresql.conf, for the database and the role (alter database, alter role), and in"
                        + " the connection URL. Bayhold keeps no record on a database that forgets, and no setting"
                        + " changes that.",
                cause);
    }
}
