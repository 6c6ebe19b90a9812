package org.bayhold.drivelog;

import java.io.IOException;
import java.io.InputStream;
import java.util.function.LongConsumer;

/** Counts what is read, tells of it every megabyte, and ends where the limit is. {@code docs/drive-log.md, D1}. */
final class CountedBytes extends InputStream {
    private static final long EVERY = 1 << 20;

    private final InputStream in;
    private final long limit;
    private final LongConsumer progress;
    private long count;
    private long told;

    CountedBytes(InputStream in, long limit, LongConsumer progress) {
        this.in = in;
        this.limit = limit;
        this.progress = progress;
    }

    /** More than may be read stands in the stream: told apart from an end, or a cut file would be judged as a whole one. */
    static final class OverTheLimitException extends IOException {
        private static final long serialVersionUID = 1L;
    }

    @Override
    public int read() throws IOException {
        byte[] one = new byte[1];
        int read = read(one, 0, 1);
        return read < 0 ? -1 : one[0] & 0xff;
    }

    @Override
    public int read(byte[] buffer, int offset, int length) throws IOException {
        int read = in.read(buffer, offset, length);
        if (read > 0) {
            count += read;
            if (count > limit) {
                throw new OverTheLimitException();
            }
            if (count - told >= EVERY) {
                told = count;
                progress.accept(count);
            }
        }
        return read;
    }

    long count() {
        return count;
    }
}
