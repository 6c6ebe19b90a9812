package org.bayhold.obd;

import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Reads raw answers to SAE J1979 service 09 (vehicle information) for VIN, CALID and CVN, InfoTypes 02, 04 and 06.
 *
 * <p>The text holds bytes in hex, one message or frame a line: payloads already put together, ISO 15765-2 frames, or the
 * numbered messages of the buses before CAN; with or without an id of 11 or 29 bit in front. Requests, flow control,
 * "wait" and services that are not read here are passed over.
 */
public final class Service09 {
    static final int MAX_CHARACTERS = 64 * 1024;
    static final int MAX_LINES = 2_000;

    private Service09() {}

    /**
     * What the ECUs said.
     *
     * @param ecus every ECU that spoke, the lowest id first
     * @param givenUp messages that were lost on the way, in the order met
     */
    public record Answer(List<Ecu> ecus, List<GivenUp> givenUp) {
        public Answer {
            ecus = List.copyOf(ecus);
            givenUp = List.copyOf(givenUp);
        }

        /**
         * The software of the engine's ECU, which has the lowest id, for comparison with a revision. Several values are
         * joined by a comma in the order reported. A value it did not give is null, whatever other ECUs gave.
         */
        public Reading reading() {
            return ecus.isEmpty() ? Reading.NOTHING : ecus.get(0).reading();
        }
    }

    /**
     * What one ECU said.
     *
     * @param id its CAN id, or its address on the buses before CAN, in upper-case hex; null where the text gave none
     * @param vin as reported, not judged
     * @param calids without their padding; none where the ECU said it has none
     * @param cvns 8 digits of upper-case hex each
     */
    public record Ecu(@Nullable String id, @Nullable String vin, List<String> calids, List<String> cvns) {
        public Ecu {
            calids = List.copyOf(calids);
            cvns = List.copyOf(cvns);
        }

        Reading reading() {
            return new Reading(joined(calids), joined(cvns), null);
        }

        private static @Nullable String joined(List<String> values) {
            return values.isEmpty() ? null : String.join(",", values);
        }
    }

    /** A message that could not be relied on, and the line where that showed. */
    public record GivenUp(int line, Flaw flaw) {}

    /**
     * Reads at most 65,536 characters and 2,000 lines.
     *
     * @throws UndecodableException when a line is not of this form, two answers of one ECU contradict each other, or no
     *     complete answer is left; never anything else
     */
    public static Answer decode(String text) throws UndecodableException {
        return read(text).answer();
    }

    /** All that the text says, of service 09 and of the others. */
    static Findings read(String text) throws UndecodableException {
        if (text.length() > MAX_CHARACTERS) {
            throw new UndecodableException(Flaw.TOO_LONG, 0);
        }
        Findings findings = new Findings();
        LegacyBus legacy = new LegacyBus(findings);
        // frames of several ECUs may be interleaved; those without an id share the key null
        Map<@Nullable String, IsoTp> can = new LinkedHashMap<>();
        int number = 0;
        for (Iterator<String> lines = text.lines().iterator(); lines.hasNext(); ) {
            if (++number > MAX_LINES) {
                throw new UndecodableException(Flaw.TOO_LONG, 0);
            }
            Message line = HexLine.read(number, lines.next());
            if (line == null) {
                continue;
            }
            if (line.at(0) >> 4 <= 3) {
                can.computeIfAbsent(line.id(), unused -> new IsoTp(findings)).accept(line);
            } else if (line.id() == null) {
                withoutId(line, legacy, findings);
            } else {
                findings.payload(line);
            }
        }
        legacy.end();
        can.forEach((id, receiver) -> receiver.end(id));
        return findings;
    }

    private static void withoutId(Message line, LegacyBus legacy, Findings findings) throws UndecodableException {
        boolean header = LegacyBus.hasHeader(line);
        Message message = header ? legacy.unwrap(line) : line;
        if (message == null) {
            return;
        }
        if (LegacyBus.isNumbered(message)) {
            legacy.accept(message);
        } else if (Diagnosis.isLegacyCodes(message, header)) {
            findings.codesBeforeCan(message);
        } else {
            findings.payload(message);
        }
    }
}
