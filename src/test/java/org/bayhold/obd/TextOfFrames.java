package org.bayhold.obd;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;

/** The sending side of ISO 15765-2, and what an ECU would send: written apart from the decoder, to hold it against. */
final class TextOfFrames {
    private static final HexFormat HEX = HexFormat.of().withUpperCase();

    private TextOfFrames() {}

    /** Frames in the notation of published captures, one an element: {@code frames("7E8", "10 14 .. / 21 ..")}. */
    static String frames(String id, String captured) {
        StringBuilder text = new StringBuilder();
        for (String frame : captured.split("/", -1)) {
            text.append(id).append(' ').append(frame.strip()).append('\n');
        }
        return text.toString();
    }

    /** The frames of one payload without ids, the last padded to 8 bytes. */
    static List<String> isoTp(byte[] payload, byte padding) {
        List<String> frames = new ArrayList<>();
        if (payload.length <= 7) {
            frames.add(frame(payload.length, -1, payload, 0, padding));
            return frames;
        }
        frames.add(frame(0x10 | payload.length >> 8, payload.length & 0xFF, payload, 0, padding));
        int sequence = 1;
        for (int at = 6; at < payload.length; at += 7) {
            frames.add(frame(0x20 | sequence, -1, payload, at, padding));
            sequence = (sequence + 1) % 16;
        }
        return frames;
    }

    private static String frame(int pci, int second, byte[] payload, int at, byte padding) {
        ByteArrayOutputStream frame = new ByteArrayOutputStream();
        frame.write(pci);
        if (second >= 0) {
            frame.write(second);
        }
        for (int i = at; frame.size() < 8; i++) {
            frame.write(i < payload.length ? payload[i] : padding);
        }
        return HEX.formatHex(frame.toByteArray());
    }

    static byte[] vinPayload(String vin) {
        return concat(new byte[] {0x49, 0x02, 1}, ascii(vin, 17));
    }

    static byte[] calidPayload(List<String> calids) {
        byte[] payload = {0x49, 0x04, (byte) calids.size()};
        for (String calid : calids) {
            payload = concat(payload, ascii(calid, 16));
        }
        return payload;
    }

    static byte[] cvnPayload(List<String> cvns) {
        byte[] payload = {0x49, 0x06, (byte) cvns.size()};
        return concat(payload, HEX.parseHex(String.join("", cvns)));
    }

    static byte[] concat(byte[] a, byte[] b) {
        ByteArrayOutputStream both = new ByteArrayOutputStream();
        both.writeBytes(a);
        both.writeBytes(b);
        return both.toByteArray();
    }

    /** Padded with zeros at the end. */
    private static byte[] ascii(String text, int width) {
        return Arrays.copyOf(text.getBytes(StandardCharsets.US_ASCII), width);
    }
}
