package org.bayhold.obd;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import java.util.TreeMap;
import org.bayhold.obd.Service09.Ecu;
import org.bayhold.support.Seed;
import org.junit.jupiter.api.Test;

/** What any ECUs say, sent in any of the forms, comes back as they said it. */
class Service09RoundTripTest {
    private static final String CHARACTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789-./abc";

    /** The address of the tester, never of an ECU. */
    private static final int TESTER = 0xF1;

    private static final HexFormat HEX = HexFormat.of().withUpperCase();

    private final long seed = Seed.OF_THIS_RUN;
    private final SplittableRandom random = new SplittableRandom(seed);

    @Test
    void whatWasSentIsWhatIsRead() throws UndecodableException {
        for (int n = 0; n < 5_000; n++) {
            List<Ecu> ecus = ecus();
            String text = interleaved(ecus);

            Service09.Answer answer = Service09.decode(text);

            assertThat(answer.ecus())
                    .as("%s, round %d:%n%s", Seed.repeats(seed), n, text)
                    .isEqualTo(ecus);
            assertThat(answer.givenUp()).isEmpty();
        }
    }

    @Test
    void aTextThatLostOneFrameNeverReadsAsSomethingElse() {
        for (int n = 0; n < 5_000; n++) {
            List<Ecu> ecus = ecus();
            List<String> lines = new ArrayList<>(interleaved(ecus).lines().toList());
            lines.remove(random.nextInt(lines.size()));
            List<Ecu> read;
            try {
                read = Service09.decode(String.join("\n", lines)).ecus();
            } catch (UndecodableException nothingLeft) {
                continue;
            }
            for (Ecu ecu : read) {
                assertThat(ecus).as("%s, round %d", Seed.repeats(seed), n).anySatisfy(sent -> {
                    assertThat(ecu.id()).isEqualTo(sent.id());
                    assertThat(ecu.vin()).isIn(sent.vin(), null);
                    assertThat(ecu.calids()).isIn(sent.calids(), List.of());
                    assertThat(ecu.cvns()).isIn(sent.cvns(), List.of());
                });
            }
        }
    }

    private List<Ecu> ecus() {
        boolean longIds = random.nextBoolean();
        TreeMap<String, Ecu> ecus = new TreeMap<>();
        for (int i = random.nextInt(1, 4); i > 0; i--) {
            String id = longIds
                    ? String.format("18DAF1%02X", random.nextInt(TESTER))
                    : String.format("7E%X", random.nextInt(8, 16));
            ecus.put(id, new Ecu(id, random.nextInt(4) == 0 ? null : word(17), words(), cvns()));
        }
        return List.copyOf(ecus.values());
    }

    private List<String> words() {
        List<String> words = new ArrayList<>();
        for (int i = random.nextInt(10); i > 0; i--) {
            words.add(word(random.nextInt(1, 17)));
        }
        return words;
    }

    private String word(int length) {
        StringBuilder word = new StringBuilder();
        for (int i = 0; i < length; i++) {
            word.append(CHARACTERS.charAt(random.nextInt(CHARACTERS.length())));
        }
        return word.toString();
    }

    private List<String> cvns() {
        List<String> cvns = new ArrayList<>();
        for (int i = random.nextInt(5); i > 0; i--) {
            cvns.add(String.format("%08X", random.nextInt()));
        }
        return cvns;
    }

    /** Each ECU's lines in their order, those of different ECUs in any. */
    private String interleaved(List<Ecu> ecus) {
        List<List<String>> queues = new ArrayList<>();
        for (Ecu ecu : ecus) {
            queues.add(new ArrayList<>(lines(ecu)));
        }
        StringBuilder text = new StringBuilder();
        while (!queues.isEmpty()) {
            List<String> queue = queues.get(random.nextInt(queues.size()));
            text.append(written(queue.remove(0))).append('\n');
            queues.removeIf(List::isEmpty);
        }
        return text.toString();
    }

    private List<String> lines(Ecu ecu) {
        List<byte[]> payloads = new ArrayList<>();
        if (ecu.vin() != null) {
            payloads.add(TextOfFrames.vinPayload(ecu.vin()));
        }
        payloads.add(TextOfFrames.calidPayload(ecu.calids()));
        if (random.nextBoolean()) {
            payloads.add(TextOfFrames.cvnPayload(ecu.cvns()));
        } else {
            byte[] cvns = TextOfFrames.cvnPayload(ecu.cvns());
            byte[] withoutService = Arrays.copyOfRange(cvns, 1, cvns.length);
            payloads.add(TextOfFrames.concat(payloads.remove(payloads.size() - 1), withoutService));
        }
        List<String> lines = new ArrayList<>();
        for (byte[] payload : payloads) {
            if (random.nextInt(4) == 0) {
                lines.add(ecu.id() + " 037F0978");
            }
            List<String> sent = random.nextInt(4) == 0
                    ? List.of(HEX.formatHex(payload))
                    : TextOfFrames.isoTp(payload, (byte) random.nextInt(256));
            sent.forEach(line -> lines.add(ecu.id() + " " + line));
        }
        return lines;
    }

    /** The same line in one of the ways people write it. */
    private String written(String line) {
        String id = line.substring(0, line.indexOf(' '));
        String bytes = line.substring(id.length() + 1);
        if (random.nextBoolean()) {
            bytes = bytes.replaceAll("(..)", "$1 ");
        }
        String written = random.nextInt(3) == 0 ? id + bytes.replace(" ", "") : id + " " + bytes;
        return random.nextBoolean() ? written : written.toLowerCase(Locale.ROOT);
    }
}
