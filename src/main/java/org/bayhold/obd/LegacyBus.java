package org.bayhold.obd;

import java.io.ByteArrayOutputStream;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * Puts together what the buses before CAN (ISO 9141-2, ISO 14230, SAE J1850) send in messages of {@code 49, InfoType,
 * message number, 4 bytes}.
 */
final class LegacyBus {
    private static final int MESSAGE = 7;

    private record Key(@Nullable String id, InfoType type) {}

    /** The messages 1, 2, 3 ... so far. */
    private static final class Run {
        final ByteArrayOutputStream data = new ByteArrayOutputStream();
        final int begin;
        int count;

        Run(int begin) {
            this.begin = begin;
        }
    }

    private final Findings findings;
    private final Map<Key, Run> runs = new LinkedHashMap<>();

    LegacyBus(Findings findings) {
        this.findings = findings;
    }

    static boolean hasHeader(Message line) {
        return line.has(0, 0x48, 0x6B) || isIso14230(line);
    }

    /** The message without header and checksum, its sender's address as id; null, and given up, if that is wrong. */
    @Nullable Message unwrap(Message line) {
        int last = line.size() - 1;
        String sender = line.size() < 3 ? null : String.format("%02X", line.at(2));
        if (last > 3 && (line.at(last) == sum(line, last) || line.at(last) == crc(line, last))) {
            return new Message(line.line(), sender, line.slice(3, last));
        }
        // whichever item it was a part of is no longer whole
        runs.keySet().removeIf(key -> Objects.equals(key.id(), sender));
        Message rest = new Message(line.line(), sender, line.slice(Math.min(3, last), line.size()));
        if (Diagnosis.isAnswer(rest)) {
            findings.giveUp(rest, line.line(), Flaw.CHECKSUM);
        } else {
            findings.giveUp(sender, line.line(), Flaw.CHECKSUM);
        }
        return null;
    }

    static boolean isNumbered(Message message) {
        return message.size() == MESSAGE && message.at(0) == Findings.ANSWER && InfoType.of(message.at(1)) != null;
    }

    void accept(Message message) throws UndecodableException {
        InfoType type = InfoType.of(message.at(1));
        if (type == null) {
            return;
        }
        Key key = new Key(message.id(), type);
        int number = message.at(2);
        Run run = runs.get(key);
        if (number == 1) {
            finish(key, runs.remove(key));
            run = new Run(message.line());
            runs.put(key, run);
        } else if (run == null || number != run.count + 1) {
            runs.remove(key);
            findings.giveUp(key.id(), message.line(), Flaw.WRONG_SEQUENCE);
            return;
        }
        run.data.write(message.slice(3, MESSAGE), 0, MESSAGE - 3);
        run.count++;
    }

    void end() throws UndecodableException {
        for (Map.Entry<Key, Run> run : runs.entrySet()) {
            finish(run.getKey(), run.getValue());
        }
    }

    private void finish(Key key, @Nullable Run run) throws UndecodableException {
        if (run == null) {
            return;
        }
        int perItem = key.type().legacyMessages();
        if (run.count % perItem != 0) {
            findings.giveUp(key.id(), run.begin, Flaw.UNFINISHED);
            return;
        }
        findings.items(new Message(run.begin, key.id(), run.data.toByteArray()), key.type(), perItem * (MESSAGE - 3));
    }

    /** Format byte with the length, tester F1 as target, sender, data, checksum (ISO 14230-2, from memory). */
    private static boolean isIso14230(Message line) {
        return line.has(1, 0xF1) && line.at(0) >= 0x80 && (line.at(0) & 0x3F) == line.size() - 4;
    }

    /** ISO 9141-2 and ISO 14230: the sum of the bytes before, modulo 256. */
    private static int sum(Message line, int end) {
        int sum = 0;
        for (int i = 0; i < end; i++) {
            sum += line.at(i);
        }
        return sum & 0xFF;
    }

    /** SAE J1850: CRC-8, polynomial 1D, begun with FF and inverted (from memory). */
    private static int crc(Message line, int end) {
        int crc = 0xFF;
        for (int i = 0; i < end; i++) {
            crc ^= line.at(i);
            for (int bit = 0; bit < 8; bit++) {
                crc = (crc & 0x80) != 0 ? (crc << 1 ^ 0x1D) & 0xFF : crc << 1;
            }
        }
        return crc ^ 0xFF;
    }
}
