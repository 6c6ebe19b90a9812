package org.bayhold.drivelog;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.lang.reflect.RecordComponent;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.bayhold.support.Seed;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Test;

/**
 * Whatever a file holds, it is judged or refused, soon, and every number of a judgement is one. {@code
 * -Ddrivelog.files=1000000} for many; {@code -Dbayhold.test.seed=} for others. docs/drive-log.md, D1.
 */
class LogFuzzTest {
    private static final int FILES = Integer.getInteger("drivelog.files", 2_000);
    private static final long SEED = Seed.OF_THIS_RUN;
    private static final Duration SOON = Duration.ofMinutes(2).plusMillis(FILES * 20L);

    private static final List<String> PIECES = List.of(
            ",",
            ";",
            "\t",
            "|",
            "\n",
            "\r\n",
            "\r",
            "\"",
            "\"\"",
            " ",
            "\u00a0",
            "0",
            "1",
            "-",
            "+",
            ".",
            "1e309",
            "1e-400",
            "NaN",
            "Infinity",
            "-0",
            "99999999999999999999",
            "12:00:00",
            "23:59:59",
            "00:00:00",
            "PM",
            "1:2:3:4",
            "\u0000",
            "\ufeff",
            "\ud83d",
            "\u0661",
            "Time",
            "RPM",
            "MAF",
            "STFT",
            "LTFT",
            "ECT",
            "MAP",
            "Lambda",
            "EQ_RAT",
            "APP_D",
            "FUELSYS1",
            "parameter",
            "value",
            "unit",
            "(",
            ")",
            "[",
            "%",
            "kPa",
            "g/s",
            "CL",
            "OL",
            "n/a",
            "1,5",
            "1.5",
            "100",
            "800",
            "6000");

    private final List<byte[]> sound = new ArrayList<>();
    private final Map<Refused, Integer> refused = new EnumMap<>(Refused.class);
    private int judged;

    LogFuzzTest() {
        for (LogText layout : LogText.values()) {
            List<MadeRow> rows = new MadeDrive(layout.name().length()).rows();
            sound.add(layout.write(rows.subList(700, 730)).getBytes(layout.charset()));
            sound.add(layout.write(rows.subList(200, 500)).getBytes(layout.charset()));
        }
    }

    @Test
    void everyFileIsJudgedOrRefused() {
        Assertions.assertTimeoutPreemptively(SOON, () -> {
            for (int i = 0; i < FILES; i++) {
                SplittableRandom random = new SplittableRandom(SEED + i);
                String where = Seed.repeats(SEED + i) + " -Ddrivelog.files=1";
                tryOut(file(random), request(random), facts(random), where);
            }
        });

        if (FILES >= 2_000) {
            assertThat(judged).as("the files do reach the judgement").isGreaterThan(FILES / 4);
            assertThat(refused.keySet()).as("and the refusals").hasSizeGreaterThanOrEqualTo(6);
        }
    }

    private void tryOut(byte[] file, ReadRequest request, EngineFacts facts, String where) {
        try {
            Judgement judgement =
                    DriveLogs.judge(new ByteArrayInputStream(file), request, facts, Thresholds.DEFAULTS, bytes -> {});
            judged++;
            assertFinite(judgement, where);
            assertThat(judgement.quality().bytes()).as(where).isEqualTo(file.length);
            assertThat(judgement.verdict() == Verdict.PASS
                            && !judgement.missing().isEmpty())
                    .as(where)
                    .isFalse();
            Preview preview = DriveLogs.preview(new ByteArrayInputStream(file), request);
            assertThat(preview.header()).as(where).isNotEmpty();
        } catch (RefusedLogException expected) {
            refused.merge(expected.reason(), 1, Integer::sum);
        } catch (Exception | StackOverflowError e) {
            throw new AssertionError(where, e);
        }
    }

    private static EngineFacts facts(SplittableRandom random) {
        EngineFacts facts = EngineFacts.UNKNOWN;
        if (random.nextBoolean()) {
            facts = facts.withDisplacementCc(1_998).withBoostTargetKpa(180).withAirflowCeilingGPerS(200);
        }
        return random.nextBoolean()
                ? facts.withExpected(new EngineFacts.ExpectedScale(5, 4, 6))
                        .withInjectors(new EngineFacts.Injectors(4, 440, 0.745, 14.7))
                : facts;
    }

    private static ReadRequest request(SplittableRandom random) {
        ReadRequest request = ReadRequest.PLAIN;
        if (random.nextInt(3) == 0) {
            request = request.withSampleSeconds(0.1);
        }
        if (random.nextInt(4) == 0) {
            request = request.withMaxBytes(1 + random.nextInt(50_000));
        }
        return random.nextInt(4) == 0
                ? request.withColumns(Map.of(
                        "ch-0", new MappedColumn(Parameter.TIME, null),
                        "ch-1", new MappedColumn(Parameter.ENGINE_SPEED, Unit.RPM),
                        "RPM", new MappedColumn(Parameter.AIRFLOW, Unit.POUND_PER_MINUTE)))
                : request;
    }

    private byte[] file(SplittableRandom random) {
        return switch (random.nextInt(6)) {
            case 0 -> pieces(random);
            case 1 -> noise(random);
            default -> mutated(random);
        };
    }

    private static byte[] pieces(SplittableRandom random) {
        StringBuilder text = new StringBuilder();
        if (random.nextBoolean()) {
            text.append("Time,RPM,MAF,ECT,STFT,LTFT,Lambda,EQ_RAT,APP_D\n");
        }
        for (int i = random.nextInt(400); i > 0; i--) {
            text.append(PIECES.get(random.nextInt(PIECES.size())));
            text.append(random.nextInt(3) == 0 ? "," : "");
            text.append(random.nextInt(12) == 0 ? "\n" : "");
        }
        return text.toString().getBytes(random.nextInt(5) == 0 ? StandardCharsets.UTF_16BE : StandardCharsets.UTF_8);
    }

    private static byte[] noise(SplittableRandom random) {
        byte[] bytes = new byte[random.nextInt(2_000)];
        for (int i = 0; i < bytes.length; i++) {
            bytes[i] = (byte) (random.nextBoolean() ? random.nextInt(256) : random.nextInt(32, 128));
        }
        return bytes;
    }

    /** Sound logs with bytes changed, pieces put in, taken out, doubled, or the end cut off. */
    private byte[] mutated(SplittableRandom random) {
        byte[] bytes = sound.get(random.nextInt(sound.size())).clone();
        for (int i = 1 + random.nextInt(8); i > 0 && bytes.length > 2; i--) {
            int at = random.nextInt(random.nextInt(3) == 0 ? Math.min(300, bytes.length) : bytes.length);
            int length = random.nextInt(Math.min(60, bytes.length - at) + 1);
            ByteArrayOutputStream next = new ByteArrayOutputStream(bytes.length + 64);
            next.write(bytes, 0, at);
            switch (random.nextInt(5)) {
                case 0 -> next.write(random.nextInt(256));
                case 1 ->
                    next.writeBytes(PIECES.get(random.nextInt(PIECES.size())).getBytes(StandardCharsets.UTF_8));
                case 2 -> next.write(bytes, at, length);
                case 3 -> at += length;
                default -> {
                    if (random.nextInt(4) == 0) {
                        return next.toByteArray();
                    }
                }
            }
            next.write(bytes, at, bytes.length - at);
            bytes = next.toByteArray();
        }
        return bytes;
    }

    private static void assertFinite(@Nullable Object value, String where) throws ReflectiveOperationException {
        if (value instanceof Double number && !Double.isFinite(number)) {
            throw new AssertionError(number + ", " + where);
        } else if (value instanceof Collection<?> all) {
            for (Object entry : all) {
                assertFinite(entry, where);
            }
        } else if (value instanceof Map<?, ?> map) {
            assertFinite(map.values(), where);
        } else if (value instanceof Record holder) {
            for (RecordComponent component : holder.getClass().getRecordComponents()) {
                component.getAccessor().setAccessible(true);
                assertFinite(component.getAccessor().invoke(holder), where);
            }
        }
    }
}
