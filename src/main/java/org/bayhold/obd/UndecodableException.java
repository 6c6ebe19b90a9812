package org.bayhold.obd;

/** The text of the answers says nothing that could be relied on. */
public final class UndecodableException extends Exception {
    private static final long serialVersionUID = 1L;

    private final Flaw flaw;
    private final int line;

    UndecodableException(Flaw flaw, int line) {
        super(line == 0 ? flaw.sentence() : "Line " + line + ": " + flaw.sentence());
        this.flaw = flaw;
        this.line = line;
    }

    public Flaw flaw() {
        return flaw;
    }

    /** The line at fault, the first being 1; 0 for the text as a whole. */
    public int line() {
        return line;
    }
}
