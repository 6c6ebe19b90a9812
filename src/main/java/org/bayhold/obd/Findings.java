package org.bayhold.obd;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Reads complete messages and keeps what each ECU said, until the text ends. */
final class Findings {
    /** The first byte of every answer to service 09. */
    static final int ANSWER = 0x49;

    private static final int NEGATIVE = 0x7F;
    private static final int SERVICE = 0x09;
    private static final int WAIT = 0x78;
    private static final HexFormat HEX = HexFormat.of().withUpperCase();

    private static final class Said {
        final Map<InfoType, List<String>> items = new EnumMap<>(InfoType.class);
    }

    // an ECU without an id has the key null
    private final Map<@Nullable String, Said> ecus = new HashMap<>();
    private final List<Service09.GivenUp> givenUp = new ArrayList<>();
    private final Diagnosis diagnosis = new Diagnosis();

    /** An ECU whose message is lost was there all the same: else the next one would pass for the engine's. */
    void giveUp(@Nullable String id, int line, Flaw flaw) {
        said(id);
        givenUp.add(new Service09.GivenUp(line, flaw));
    }

    /** What was to become a message is lost; one of a service that is not read here is no loss. */
    void giveUp(Message rest, int line, Flaw flaw) {
        if (rest.at(0) == ANSWER) {
            giveUp(rest.id(), line, flaw);
        } else if (Diagnosis.isAnswer(rest)) {
            heard(rest);
            diagnosis.lose(rest, line, flaw);
        }
    }

    /** A frame whose first one is missing: nobody knows of which service it is. */
    void orphan(Message frame) {
        diagnosis.orphan(frame);
    }

    /** One message of trouble codes on a bus before CAN. */
    void codesBeforeCan(Message message) {
        heard(message);
        diagnosis.codesBeforeCan(message);
    }

    /** Whoever has an id is one ECU more, of which the lowest is the engine's. */
    private void heard(Message message) {
        if (message.id() != null) {
            said(message.id());
        }
    }

    /** A complete message on CAN: {@code 49}, then one or more of InfoType, count of items, items. */
    void payload(Message message) throws UndecodableException {
        if (message.has(0, NEGATIVE, SERVICE) && message.size() > 2) {
            refusal(message);
            return;
        }
        if (message.at(0) != ANSWER) {
            if (Diagnosis.isAnswer(message)) {
                heard(message);
            }
            diagnosis.payload(message);
            return;
        }
        said(message.id());
        List<Message> parts = new ArrayList<>();
        List<InfoType> types = new ArrayList<>();
        int from = 1;
        while (from < message.size()) {
            InfoType type = InfoType.of(message.at(from));
            if (type == null) {
                break;
            }
            int begin = from + 2;
            int end = begin > message.size() ? begin : begin + message.at(from + 1) * type.bytes();
            if (end > message.size()) {
                giveUp(message.id(), message.line(), Flaw.SHORT_ANSWER);
                return;
            }
            types.add(type);
            parts.add(new Message(message.line(), message.id(), message.slice(begin, end)));
            from = end;
        }
        for (int i = 0; i < parts.size(); i++) {
            items(parts.get(i), types.get(i), types.get(i).bytes());
        }
    }

    /** Items one behind the other, each as wide as given and its data at the end of that width. */
    void items(Message data, InfoType type, int width) throws UndecodableException {
        if (type == InfoType.ECU_NAME) {
            return;
        }
        List<String> values = new ArrayList<>();
        for (int end = width; end <= data.size(); end += width) {
            byte[] item = data.slice(end - type.bytes(), end);
            String value = type == InfoType.CVN ? HEX.formatHex(item) : text(item);
            if (value == null) {
                giveUp(data.id(), data.line(), Flaw.UNPRINTABLE);
                return;
            }
            if (!value.isEmpty()) {
                values.add(value);
            }
        }
        List<String> before = said(data.id()).items.putIfAbsent(type, values);
        boolean severalVins = type == InfoType.VIN && values.stream().distinct().count() > 1;
        if (severalVins || (before != null && !before.equals(values))) {
            throw new UndecodableException(Flaw.CONTRADICTION, data.line());
        }
    }

    Diagnosis diagnosis() {
        return diagnosis;
    }

    List<Service09.GivenUp> givenUp() {
        return givenUp;
    }

    boolean saidAnything() {
        return ecus.values().stream().anyMatch(said -> !said.items.isEmpty());
    }

    /** @throws UndecodableException when nothing was said, for the first reason that was met */
    Service09.Answer answer() throws UndecodableException {
        if (!saidAnything()) {
            throw givenUp.isEmpty()
                    ? new UndecodableException(Flaw.NO_ANSWER, 0)
                    : new UndecodableException(
                            givenUp.get(0).flaw(), givenUp.get(0).line());
        }
        List<Service09.Ecu> found = new ArrayList<>();
        ecus.forEach((id, said) -> {
            List<String> vins = said.items.getOrDefault(InfoType.VIN, List.of());
            found.add(new Service09.Ecu(
                    id,
                    vins.isEmpty() ? null : vins.get(0),
                    said.items.getOrDefault(InfoType.CALID, List.of()),
                    said.items.getOrDefault(InfoType.CVN, List.of())));
        });
        found.sort(Comparator.comparingLong(Findings::rank));
        return new Service09.Answer(found, givenUp);
    }

    private void refusal(Message message) {
        if (message.at(2) == WAIT) {
            said(message.id());
        } else {
            giveUp(message.id(), message.line(), Flaw.REFUSED);
        }
    }

    private Said said(@Nullable String id) {
        return ecus.computeIfAbsent(id, unused -> new Said());
    }

    private static long rank(Service09.Ecu ecu) {
        String id = ecu.id();
        return id == null ? -1 : Long.parseLong(id, 16);
    }

    /**
     * Without the zeros around it, and without blanks, with which some ECUs fill up instead (common practice, no
     * source); empty when there is nothing else, null when a byte is no printable character.
     */
    private static @Nullable String text(byte[] item) {
        int from = 0;
        int to = item.length;
        while (from < to && isFiller(item[from])) {
            from++;
        }
        while (to > from && isFiller(item[to - 1])) {
            to--;
        }
        for (int i = from; i < to; i++) {
            if (item[i] < ' ' || item[i] > '~') {
                return null;
            }
        }
        return new String(item, from, to - from, StandardCharsets.US_ASCII);
    }

    private static boolean isFiller(byte b) {
        return b == 0 || b == ' ';
    }
}
