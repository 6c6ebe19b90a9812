package org.bayhold.obd;

import java.io.ByteArrayOutputStream;
import java.util.ArrayList;
import java.util.List;

/** What an ECU sends of its trouble codes and monitors: written apart from the decoder, to hold it against. */
final class TextOfCodes {
    private TextOfCodes() {}

    /** Two bits of letter, two of digit, twelve of the rest (SAE J2012). */
    static int number(String code) {
        int letter = List.of("P", "C", "B", "U").indexOf(code.substring(0, 1));
        return letter * 0x4000 + Integer.parseInt(code.substring(1), 16);
    }

    /** On CAN: the answer's service, how many, then two bytes each. */
    static byte[] canPayload(int service, List<String> codes) {
        ByteArrayOutputStream payload = new ByteArrayOutputStream();
        payload.write(0x40 + service);
        payload.write(codes.size());
        codes.forEach(code -> write(payload, number(code)));
        return payload.toByteArray();
    }

    /** On the buses before CAN: three a message, filled up with zeros; one message at least. */
    static List<byte[]> legacyMessages(int service, List<String> codes) {
        List<byte[]> messages = new ArrayList<>();
        for (int from = 0; from == 0 || from < codes.size(); from += 3) {
            ByteArrayOutputStream message = new ByteArrayOutputStream();
            message.write(0x40 + service);
            for (int i = from; i < from + 3; i++) {
                write(message, i < codes.size() ? number(codes.get(i)) : 0);
            }
            messages.add(message.toByteArray());
        }
        return messages;
    }

    /** With the header of ISO 9141-2 and the sum of all bytes before at the end. */
    static byte[] withHeader(int sender, byte[] message) {
        ByteArrayOutputStream sent = new ByteArrayOutputStream();
        sent.writeBytes(new byte[] {0x48, 0x6B, (byte) sender});
        sent.writeBytes(message);
        int sum = 0;
        for (byte b : sent.toByteArray()) {
            sum += b & 0xFF;
        }
        sent.write(sum);
        return sent.toByteArray();
    }

    private static void write(ByteArrayOutputStream to, int number) {
        to.write(number >> 8);
        to.write(number);
    }
}
