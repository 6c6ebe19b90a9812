package org.bayhold.drivelog;

import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/** Log files of any length: a made drive goes on and on, and only its clock does not repeat itself. */
public final class MadeLog {
    private static final int TENTHS = 10;

    private final byte[] header;
    private final List<byte[]> tails = new ArrayList<>();

    /** @param repeats how many rounds of ten minutes are made before they repeat */
    public MadeLog(long seed, int repeats) {
        List<MadeRow> rows = new MadeDrive(seed).times(repeats).rows();
        String[] lines = LogText.PLAIN.write(rows).split("\n", -1);
        header = (lines[0] + "\n").getBytes(StandardCharsets.US_ASCII);
        for (int i = 1; i < lines.length - 1; i++) {
            String tail = lines[i].substring(lines[i].indexOf(',')) + "\n";
            tails.add(tail.getBytes(StandardCharsets.US_ASCII));
        }
    }

    /** At least so many bytes, to the end of a row, written as they are read. */
    public InputStream stream(long bytes) {
        return new Endless(bytes);
    }

    private final class Endless extends InputStream {
        private final long bytes;
        private byte[] part = header;
        private int at;
        private long given;
        private long row;
        private boolean isTail = true;

        Endless(long bytes) {
            this.bytes = bytes;
        }

        @Override
        public int read() {
            byte[] one = new byte[1];
            return read(one, 0, 1) < 0 ? -1 : one[0] & 0xff;
        }

        @Override
        public int read(byte[] buffer, int offset, int length) {
            int filled = 0;
            while (filled < length) {
                if (at == part.length && !next()) {
                    break;
                }
                int more = Math.min(length - filled, part.length - at);
                System.arraycopy(part, at, buffer, offset + filled, more);
                at += more;
                filled += more;
            }
            given += filled;
            return filled == 0 && length > 0 ? -1 : filled;
        }

        private boolean next() {
            at = 0;
            if (isTail) {
                if (given >= bytes) {
                    part = new byte[0];
                    return false;
                }
                row++;
                part = (row / TENTHS + "." + row % TENTHS).getBytes(StandardCharsets.US_ASCII);
            } else {
                part = tails.get((int) (row % tails.size()));
            }
            isTail = !isTail;
            return true;
        }
    }
}
