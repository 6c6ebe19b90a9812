package org.bayhold.drivelog;

import java.util.List;
import org.bayhold.prediction.Sentence;

/** A file that is no drive log, or cannot be judged as one: nothing of it is kept. {@code docs/drive-log.md, D1}. */
public final class RefusedLogException extends Exception {
    private static final long serialVersionUID = 1L;

    private final Refused reason;
    private final long row;

    RefusedLogException(Refused reason, long row) {
        super(reason + " at row " + row);
        this.reason = reason;
        this.row = row;
    }

    public Refused reason() {
        return reason;
    }

    /** The line of the file at fault, the first being 1; 0 for the file as a whole. */
    public long row() {
        return row;
    }

    public Sentence sentence() {
        return new Sentence("drivelog.refused." + reason.name(), List.of(row));
    }
}
