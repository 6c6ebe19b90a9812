package org.bayhold.obd;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.TreeSet;
import org.bayhold.obd.TroubleCode.Kind;
import org.bayhold.support.Seed;
import org.junit.jupiter.api.Test;

/** What any ECUs keep, sent in any of the forms, comes back as they keep it; what is lost never makes a list shorter. */
class TroubleCodesRoundTripTest {
    private static final HexFormat HEX = HexFormat.of().withUpperCase();
    private static final Map<Kind, Integer> SERVICES =
            new EnumMap<>(Map.of(Kind.STORED, 3, Kind.PENDING, 7, Kind.PERMANENT, 10));

    private final long seed = Seed.OF_THIS_RUN;
    private final SplittableRandom random = new SplittableRandom(seed);

    @Test
    void whatWasSentOnCanIsWhatIsRead() throws UndecodableException {
        for (int n = 0; n < 5_000; n++) {
            Map<String, Map<Kind, List<String>>> ecus = ecus();
            String text = String.join("\n", interleaved(ecus));

            assertThat(read(EcuAnswers.decode(text)))
                    .as("%s, round %d:%n%s", Seed.repeats(seed), n, text)
                    .isEqualTo(kept(ecus));
        }
    }

    @Test
    void whatWasSentBeforeCanIsWhatIsRead() throws UndecodableException {
        for (int n = 0; n < 2_000; n++) {
            Map<String, Map<Kind, List<String>>> ecus = ecus();
            boolean headers = random.nextBoolean();
            StringBuilder text = new StringBuilder();
            int sender = 0x10;
            for (Map<Kind, List<String>> kept : ecus.values()) {
                int from = sender++;
                kept.forEach((kind, codes) -> TextOfCodes.legacyMessages(service(kind), codes)
                        .forEach(message -> text.append(
                                        HEX.formatHex(headers ? TextOfCodes.withHeader(from, message) : message))
                                .append('\n')));
            }

            assertThat(read(EcuAnswers.decode(text.toString())))
                    .as("%s, round %d:%n%s", Seed.repeats(seed), n, text)
                    .isEqualTo(kept(ecus));
        }
    }

    /** A message that is one line may be lost unseen; of a longer one every frame is missed. */
    @Test
    void aTextThatLostAFrameOfAListIsRefused() {
        int refused = 0;
        for (int n = 0; n < 5_000; n++) {
            Map<String, Map<Kind, List<String>>> ecus = ecus();
            List<String> lines = interleaved(ecus);
            String lost = lines.remove(random.nextInt(lines.size()));
            EcuAnswers answers;
            try {
                answers = EcuAnswers.decode(String.join("\n", lines));
            } catch (UndecodableException e) {
                refused++;
                continue;
            }
            Map<Kind, TreeSet<String>> kept = kept(ecus);
            int round = n;
            read(answers)
                    .forEach((kind, codes) -> assertThat(kept.get(kind))
                            .as("%s, round %d", Seed.repeats(seed), round)
                            .containsAll(codes));
            String frame = lost.replace(" ", "").toUpperCase(Locale.ROOT).replaceFirst("^(7E.|18DAF1..)", "");
            assertThat(frame)
                    .as("%s, round %d: a part of a longer message", Seed.repeats(seed), n)
                    .doesNotStartWith("10");
        }
        assertThat(refused).isGreaterThan(500);
    }

    private static int service(Kind kind) {
        return SERVICES.get(kind);
    }

    /** By id what each ECU keeps of each kind; every ECU tells of the stored ones. */
    private Map<String, Map<Kind, List<String>>> ecus() {
        boolean longIds = random.nextBoolean();
        Map<String, Map<Kind, List<String>>> ecus = new TreeMap<>();
        for (int i = random.nextInt(1, 4); i > 0; i--) {
            String id = longIds
                    ? String.format("18DAF1%02X", random.nextInt(0xF0))
                    : String.format("7E%X", random.nextInt(8, 16));
            Map<Kind, List<String>> kept = new EnumMap<>(Kind.class);
            for (Kind kind : Kind.values()) {
                if (kind == Kind.STORED || random.nextBoolean()) {
                    kept.put(kind, codes());
                }
            }
            ecus.put(id, kept);
        }
        return ecus;
    }

    private List<String> codes() {
        TreeSet<String> codes = new TreeSet<>();
        for (int i = random.nextInt(3) == 0 ? 0 : random.nextInt(12); i > 0; i--) {
            String letter = List.of("P", "C", "B", "U").get(random.nextInt(4));
            codes.add(letter + random.nextInt(4) + String.format("%03X", random.nextInt(1, 0x1000)));
        }
        return List.copyOf(codes);
    }

    private static Map<Kind, TreeSet<String>> kept(Map<String, Map<Kind, List<String>>> ecus) {
        Map<Kind, TreeSet<String>> kept = new EnumMap<>(Kind.class);
        ecus.values()
                .forEach(one -> one.forEach((kind, codes) ->
                        kept.computeIfAbsent(kind, unused -> new TreeSet<>()).addAll(codes)));
        return kept;
    }

    private static Map<Kind, TreeSet<String>> read(EcuAnswers answers) {
        Map<Kind, TreeSet<String>> read = new EnumMap<>(Kind.class);
        answers.told().forEach(kind -> read.put(kind, new TreeSet<>()));
        answers.codes().forEach(code -> read.get(code.kind()).add(code.code()));
        return read;
    }

    /** Each ECU's lines in their order, those of different ECUs in any. */
    private List<String> interleaved(Map<String, Map<Kind, List<String>>> ecus) {
        List<List<String>> queues = new ArrayList<>();
        ecus.forEach((id, kept) -> {
            List<String> lines = new ArrayList<>();
            kept.forEach((kind, codes) -> {
                byte[] payload = TextOfCodes.canPayload(service(kind), codes);
                List<String> sent = random.nextInt(4) == 0
                        ? List.of(HEX.formatHex(payload))
                        : TextOfFrames.isoTp(payload, (byte) random.nextInt(256));
                if (random.nextInt(4) == 0) {
                    lines.add(written(id, String.format("037F%02X78", service(kind))));
                }
                sent.forEach(line -> lines.add(written(id, line)));
            });
            queues.add(lines);
        });
        List<String> text = new ArrayList<>();
        while (!queues.isEmpty()) {
            List<String> queue = queues.get(random.nextInt(queues.size()));
            text.add(queue.remove(0));
            queues.removeIf(List::isEmpty);
        }
        return text;
    }

    private String written(String id, String bytes) {
        String spaced =
                random.nextBoolean() ? bytes : bytes.replaceAll("(..)", "$1 ").strip();
        String line = random.nextInt(3) == 0 ? id + bytes : id + " " + spaced;
        return random.nextBoolean() ? line : line.toLowerCase(Locale.ROOT);
    }
}
