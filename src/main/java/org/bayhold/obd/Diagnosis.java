package org.bayhold.obd;

import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.bayhold.obd.TroubleCode.Kind;
import org.jspecify.annotations.Nullable;

/**
 * Keeps the trouble codes and the monitors that each ECU told, until the text ends: services 03, 07 and 0A, and PID 01 of
 * service 01. A message that is lost makes the whole undecodable, unless the same ECU answers again: half a list of codes
 * would pass for a clean one.
 */
final class Diagnosis {
    /** What an answer's service id has more than its request's. */
    private static final int ANSWERS = 0x40;

    private static final int NEGATIVE = 0x7F;
    private static final int WAIT = 0x78;
    private static final int CURRENT_DATA = 0x01;
    private static final int MONITORS = 0x01;
    private static final int MONITORS_SIZE = 6;
    /** The buses before CAN carry three codes a message, filled up with zeros, and no count. */
    private static final int LEGACY = 7;

    private record Asked(@Nullable String id, int service) {}

    private final Map<Asked, Set<String>> codesOnCan = new LinkedHashMap<>();
    private final Map<Kind, Set<String>> codesBeforeCan = new EnumMap<>(Kind.class);
    private final Map<Asked, Message> monitors = new LinkedHashMap<>();
    private final Map<Asked, Service09.GivenUp> lost = new LinkedHashMap<>();
    private Service09.@Nullable GivenUp orphan;
    private final List<Service09.GivenUp> refused = new ArrayList<>();

    /** Whether it begins an answer that is read here. */
    static boolean isAnswer(Message message) {
        return codes(message) != null || message.has(0, CURRENT_DATA + ANSWERS, MONITORS);
    }

    /** Without an id or a header only its length tells on which bus a list of codes was sent. */
    static boolean isLegacyCodes(Message message, boolean header) {
        return codes(message) != null && (header || message.size() == LEGACY);
    }

    private static @Nullable Kind codes(Message message) {
        return Kind.ofService(message.at(0) - ANSWERS);
    }

    void lose(Message message, int line, Flaw flaw) {
        lost.putIfAbsent(asked(message), new Service09.GivenUp(line, flaw));
    }

    /** A frame whose first one is missing may be the rest of any list. */
    void orphan(Message frame) {
        orphan = orphan == null ? new Service09.GivenUp(frame.line(), Flaw.WRONG_SEQUENCE) : orphan;
    }

    private static Asked asked(Message message) {
        return new Asked(message.id(), message.at(0) - ANSWERS);
    }

    /** A complete message on CAN, or one that looks alike on every bus. */
    void payload(Message message) throws UndecodableException {
        if (message.at(0) == NEGATIVE) {
            boolean concerns =
                    message.size() > 2 && (message.at(1) == CURRENT_DATA || Kind.ofService(message.at(1)) != null);
            if (concerns && message.at(2) != WAIT) {
                refused.add(new Service09.GivenUp(message.line(), Flaw.REFUSED));
            }
        } else if (codes(message) != null) {
            codesOnCan(message);
        } else if (isAnswer(message)) {
            monitors(message);
        }
    }

    private void codesOnCan(Message message) throws UndecodableException {
        int end = message.size() < 2 ? message.size() + 1 : 2 + 2 * message.at(1);
        if (end > message.size()) {
            lose(message, message.line(), Flaw.SHORT_ANSWER);
            return;
        }
        for (int i = end; i < message.size(); i++) {
            if (message.at(i) != 0) {
                lose(message, message.line(), Flaw.CODE_COUNT);
                return;
            }
        }
        Set<String> codes = pairs(message, 2, end);
        Set<String> before = codesOnCan.putIfAbsent(asked(message), codes);
        if (before != null && !before.equals(codes)) {
            throw new UndecodableException(Flaw.CONTRADICTION, message.line());
        }
    }

    /** One of the messages of a list; the others may come from any ECU. */
    void codesBeforeCan(Message message) {
        Kind kind = codes(message);
        if (kind == null || message.size() != LEGACY) {
            lose(message, message.line(), Flaw.SHORT_ANSWER);
            return;
        }
        codesBeforeCan.computeIfAbsent(kind, unused -> new TreeSet<>()).addAll(pairs(message, 1, LEGACY));
    }

    private static Set<String> pairs(Message message, int from, int to) {
        Set<String> codes = new TreeSet<>();
        for (int i = from; i + 1 < to; i += 2) {
            if (message.at(i) != 0 || message.at(i + 1) != 0) {
                codes.add(TroubleCode.read(message.at(i), message.at(i + 1)));
            }
        }
        return codes;
    }

    private void monitors(Message message) throws UndecodableException {
        if (message.size() < MONITORS_SIZE) {
            lose(message, message.line(), Flaw.SHORT_ANSWER);
            return;
        }
        Message told = new Message(message.line(), message.id(), message.slice(0, MONITORS_SIZE));
        Message before = monitors.putIfAbsent(asked(message), told);
        if (before != null && !before.has(2, told.at(2), told.at(3), told.at(4), told.at(5))) {
            throw new UndecodableException(Flaw.CONTRADICTION, message.line());
        }
    }

    /** @throws UndecodableException when a message is lost for good; without an id nobody knows whose answer came later */
    void end() throws UndecodableException {
        for (Map.Entry<Asked, Service09.GivenUp> message : lost.entrySet()) {
            Asked asked = message.getKey();
            boolean again = asked.id() != null && (codesOnCan.containsKey(asked) || monitors.containsKey(asked));
            if (!again) {
                throw new UndecodableException(
                        message.getValue().flaw(), message.getValue().line());
            }
        }
        if (orphan != null && !codes().isEmpty()) {
            throw new UndecodableException(orphan.flaw(), orphan.line());
        }
    }

    /** By kind what was told, each code once, in the order of the codes; a kind that nobody told of is left out. */
    Map<Kind, Set<String>> codes() {
        Map<Kind, Set<String>> codes = new EnumMap<>(Kind.class);
        codesBeforeCan.forEach((kind, told) -> codes.put(kind, new TreeSet<>(told)));
        codesOnCan.forEach((asked, told) -> Stream.ofNullable(Kind.ofService(asked.service()))
                .forEach(kind ->
                        codes.computeIfAbsent(kind, unused -> new TreeSet<>()).addAll(told)));
        return codes;
    }

    @Nullable Readiness readiness() {
        Collection<Message> told = monitors.values();
        return told.isEmpty() ? null : Readiness.of(told);
    }

    List<Service09.GivenUp> refused() {
        return refused;
    }
}
