package org.bayhold.drivelog;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.SequenceInputStream;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.Charset;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.function.LongConsumer;

/** A file as text: its beginning, to see how it is laid out, and the whole of it, to be read once. {@code docs/drive-log.md, D2}. */
final class TextSource {
    static final int HEAD_BYTES = 1 << 16;

    private final CountedBytes bytes;
    private final byte[] beginning;
    private final boolean isWhole;
    private final Charset charset;
    private final int mark;

    private TextSource(CountedBytes bytes, byte[] beginning, boolean isWhole) {
        this.bytes = bytes;
        this.beginning = beginning;
        this.isWhole = isWhole;
        this.charset = charset(beginning, isWhole);
        this.mark = markLength(beginning, charset);
    }

    static TextSource open(InputStream in, long limit, LongConsumer progress) throws IOException, RefusedLogException {
        CountedBytes bytes = new CountedBytes(in, limit, progress);
        byte[] beginning = bytes.readNBytes(HEAD_BYTES);
        if (beginning.length == 0) {
            throw new RefusedLogException(Refused.EMPTY, 0);
        }
        if (isCompressed(beginning)) {
            throw new RefusedLogException(Refused.COMPRESSED, 0);
        }
        return new TextSource(bytes, beginning, beginning.length < HEAD_BYTES);
    }

    /** gzip, zip (and the spreadsheets that are one), bzip2, xz, Zstandard, 7z by their first bytes. */
    private static boolean isCompressed(byte[] head) {
        return startsWith(head, 0x1f, 0x8b)
                || startsWith(head, 'P', 'K', 3, 4)
                || startsWith(head, 'P', 'K', 5, 6)
                || startsWith(head, 'B', 'Z', 'h')
                || startsWith(head, 0xfd, '7', 'z', 'X', 'Z')
                || startsWith(head, 0x28, 0xb5, 0x2f, 0xfd)
                || startsWith(head, '7', 'z', 0xbc, 0xaf);
    }

    private static boolean startsWith(byte[] head, int... first) {
        for (int i = 0; i < first.length; i++) {
            if (i >= head.length || (head[i] & 0xff) != first[i]) {
                return false;
            }
        }
        return true;
    }

    private static Charset charset(byte[] head, boolean whole) {
        if (startsWith(head, 0xff, 0xfe)) {
            return StandardCharsets.UTF_16LE;
        }
        if (startsWith(head, 0xfe, 0xff)) {
            return StandardCharsets.UTF_16BE;
        }
        int[] zeros = new int[2];
        for (int i = 0; i < head.length; i++) {
            zeros[i & 1] += head[i] == 0 ? 1 : 0;
        }
        int half = head.length / 2;
        if (zeros[1] > half * 0.7 && zeros[0] < half * 0.3) {
            return StandardCharsets.UTF_16LE;
        }
        if (zeros[0] > half * 0.7 && zeros[1] < half * 0.3) {
            return StandardCharsets.UTF_16BE;
        }
        return isUtf8(head, whole) ? StandardCharsets.UTF_8 : StandardCharsets.ISO_8859_1;
    }

    private static boolean isUtf8(byte[] head, boolean whole) {
        CharsetDecoder strict = StandardCharsets.UTF_8.newDecoder();
        CharBuffer into = CharBuffer.allocate(head.length);
        return !strict.decode(ByteBuffer.wrap(head), into, whole).isError();
    }

    private static int markLength(byte[] head, Charset charset) {
        if (charset.equals(StandardCharsets.UTF_8)) {
            return startsWith(head, 0xef, 0xbb, 0xbf) ? 3 : 0;
        }
        return startsWith(head, 0xff, 0xfe) || startsWith(head, 0xfe, 0xff) ? 2 : 0;
    }

    Charset charset() {
        return charset;
    }

    /** The first rows, complete ones: what is cut at the end of a long file's beginning is left away. */
    String head() {
        String text = new String(beginning, mark, beginning.length - mark, charset);
        if (isWhole) {
            return text;
        }
        int end = Math.max(text.lastIndexOf('\n'), text.lastIndexOf('\r'));
        return end < 0 ? text : text.substring(0, end + 1);
    }

    /** All of it, once. */
    Reader reader() {
        byte[] text = Arrays.copyOfRange(beginning, mark, beginning.length);
        InputStream all = isWhole
                ? new ByteArrayInputStream(text)
                : new SequenceInputStream(new ByteArrayInputStream(text), bytes);
        return new InputStreamReader(all, charset);
    }

    long bytesRead() {
        return bytes.count();
    }
}
