package org.bayhold.drivelog;

import de.siegmar.fastcsv.reader.AbstractBaseCsvCallbackHandler;
import java.io.Serial;

/** What is common to reading rows: where values begin, and lines that are too long. */
abstract class RowsHandler extends AbstractBaseCsvCallbackHandler<Boolean> {
    static final int STATUS = Parameter.FUEL_SYSTEM_STATUS.index();
    static final int TIME = Parameter.TIME.index();
    private static final int LONGEST_ROW = 1 << 20;

    final Frame frame;
    final Flaws flaws;
    private final long firstRow;
    private long row;
    private int length;
    private boolean isBody;

    RowsHandler(Layout layout, Frame frame, Flaws flaws) {
        this.firstRow = layout.firstRow();
        this.frame = frame;
        this.flaws = flaws;
    }

    /** Stops the reading; the caller makes a {@link RefusedLogException} of it. */
    static final class TooLongException extends RuntimeException {
        @Serial
        private static final long serialVersionUID = 1L;
    }

    @Override
    protected final void handleBegin(long line) {
        row = line;
        length = 0;
        isBody = line >= firstRow;
        begin();
    }

    @Override
    protected final void handleField(int index, char[] buffer, int offset, int fieldLength, boolean quoted) {
        length += fieldLength;
        if (index >= Head.COLUMNS || length > LONGEST_ROW) {
            throw new TooLongException();
        }
        if (isBody) {
            field(index, buffer, offset, fieldLength);
        }
    }

    @Override
    protected final Boolean buildRecord() {
        if (isBody) {
            end();
        }
        return Boolean.TRUE;
    }

    final long row() {
        return row;
    }

    abstract void begin();

    abstract void field(int index, char[] buffer, int offset, int length);

    abstract void end();

    /** The file is at its end. */
    void finish() {}
}
