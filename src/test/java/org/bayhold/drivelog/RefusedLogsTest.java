package org.bayhold.drivelog;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.zip.GZIPOutputStream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What is not judged at all, with row and reason. docs/drive-log.md, D1. */
class RefusedLogsTest {
    private static final String HEADER = "Time (s),RPM,MAF (g/s)\n";

    private record Case(Refused reason, long row, String text) {
        @Override
        public String toString() {
            return reason + " at " + row;
        }
    }

    static List<Case> cases() {
        return List.of(
                new Case(Refused.EMPTY, 0, ""),
                new Case(Refused.NOT_A_TABLE, 1, "\n"),
                new Case(Refused.NOT_A_TABLE, 1, "Dear Sir,\nthe car runs well now.\nYours"),
                new Case(Refused.NOT_A_TABLE, 1, "x".repeat(200_000)),
                new Case(Refused.NOT_A_TABLE, 1, "\u0000\u0001,\u0002\n\u0000\u0003,\u0004\n"),
                new Case(Refused.NO_RECOGNISED_PARAMETER, 1, "name;town\nInes;Bay\nOmar;Hill\n"),
                new Case(Refused.NO_RECOGNISED_PARAMETER, 3, "\n\ntime,gear\n1,2\n3,4\n"),
                new Case(Refused.NO_RECOGNISED_PARAMETER, 1, "time,MAF (V)\n1,2\n3,4\n"),
                new Case(Refused.NO_TIME, 1, "RPM,MAF\n800,4\n"),
                new Case(Refused.NO_TIME, 1, "Parameter,Value\nRPM,800\nRPM,801\n"),
                new Case(Refused.NO_ROWS, 1, HEADER),
                new Case(Refused.NO_ROWS, 1, HEADER + "x,800,4\ny,801,4\n"),
                new Case(Refused.ROWS_DO_NOT_FIT_THE_HEADER, 2, HEADER + "0,1,812,5,4,25\n0,2,811,5,4,25\n"),
                new Case(Refused.BROKEN_QUOTES, 3, HEADER + "0,800,4\n1,\"800,4\n" + "2,800,4\n".repeat(20_000)),
                new Case(Refused.LINE_TOO_LONG, 3, HEADER + "0,800,4\n" + "1,".repeat(5_000) + "\n"),
                new Case(
                        Refused.LINE_TOO_LONG,
                        3,
                        HEADER + "0,800,4\n" + ("1".repeat(20_000) + ",").repeat(60) + "\n" + "2,800,4\n"));
    }

    @ParameterizedTest
    @MethodSource("cases")
    void isRefusedWithRowAndReason(Case wrong) {
        RefusedLogException refused = Logs.refusal(wrong.text(), ReadRequest.PLAIN);

        assertThat(refused.reason()).isEqualTo(wrong.reason());
        assertThat(refused.row()).isEqualTo(wrong.row());
        assertThat(refused.sentence().key()).isEqualTo("drivelog.refused." + wrong.reason());
        assertThat(refused.sentence().arguments()).isEqualTo(List.of(wrong.row()));
        assertThat(refused).hasMessageContaining(wrong.reason().name());
    }

    /** Nothing is unpacked, so that nothing can burst. */
    @Test
    void whatIsCompressedIsNotUnpacked() throws IOException {
        byte[] log = (HEADER + "0,800,4\n").getBytes(StandardCharsets.UTF_8);
        ByteArrayOutputStream gzip = new ByteArrayOutputStream();
        try (GZIPOutputStream out = new GZIPOutputStream(gzip)) {
            out.write(log);
        }
        ByteArrayOutputStream zip = new ByteArrayOutputStream();
        try (ZipOutputStream out = new ZipOutputStream(zip)) {
            out.putNextEntry(new ZipEntry("log.csv"));
            out.write(log);
        }

        assertThat(Logs.refusal(gzip.toByteArray(), ReadRequest.PLAIN).reason()).isEqualTo(Refused.COMPRESSED);
        assertThat(Logs.refusal(zip.toByteArray(), ReadRequest.PLAIN).reason()).isEqualTo(Refused.COMPRESSED);
    }

    @Test
    void overTheLimitIsRefusedWhereItIsMet() {
        String log = HEADER + "0,800,4\n".repeat(50_000);

        RefusedLogException late = Logs.refusal(log, ReadRequest.PLAIN.withMaxBytes(300_000));
        RefusedLogException early = Logs.refusal(log, ReadRequest.PLAIN.withMaxBytes(100));

        assertThat(late.reason()).isEqualTo(Refused.OVER_THE_LIMIT);
        assertThat(late.row()).isBetween(30_000L, 38_000L);
        assertThat(early.reason()).isEqualTo(Refused.OVER_THE_LIMIT);
        assertThat(early.row()).isZero();
    }

    @Test
    void aFileOfExactlyTheLimitIsRead() {
        String log = HEADER + "0,800,4\n0.1,801,4\n";

        Judgement judgement = Logs.judge(log, ReadRequest.PLAIN.withMaxBytes(log.length()), EngineFacts.UNKNOWN);

        assertThat(judgement.quality().bytes()).isEqualTo(log.length());
    }

    @Test
    void aStreamThatFailsIsNoRefusal() {
        byte[] begin = (HEADER + "0,800,4\n".repeat(20_000)).getBytes(StandardCharsets.UTF_8);
        InputStream failing = new InputStream() {
            private final InputStream in = new ByteArrayInputStream(begin);

            @Override
            public int read() throws IOException {
                int read = in.read();
                if (read < 0) {
                    throw new IOException("line is down");
                }
                return read;
            }
        };

        assertThatThrownBy(() -> DriveLogs.judge(
                        failing, ReadRequest.PLAIN, EngineFacts.UNKNOWN, Thresholds.DEFAULTS, bytes -> {}))
                .isExactlyInstanceOf(IOException.class)
                .hasMessage("line is down");
    }

    @Test
    void progressIsToldOnTheWay() throws IOException, RefusedLogException {
        byte[] log = (HEADER + "0,800,4\n".repeat(700_000)).getBytes(StandardCharsets.UTF_8);
        List<Long> told = new ArrayList<>();

        DriveLogs.judge(
                new ByteArrayInputStream(log), ReadRequest.PLAIN, EngineFacts.UNKNOWN, Thresholds.DEFAULTS, told::add);

        assertThat(told).hasSizeBetween(4, 6).isSorted();
        assertThat(told.get(told.size() - 1)).isLessThanOrEqualTo(log.length);
    }

    @Test
    void aPageSeesTheColumnsBeforeItMapsThem() throws IOException, RefusedLogException {
        Preview known = preview("Time (s);Engine RPM;x1;MAF (V);RPM\ns;rpm;;;\n0,1;800;7;2,5;800\n0,2;801;7;2,5;801\n");

        assertThat(known.separator()).isEqualTo(';');
        assertThat(known.decimalMark()).isEqualTo(',');
        assertThat(known.hasTime()).isTrue();
        assertThat(known.header()).containsExactly("Time (s)", "Engine RPM", "x1", "MAF (V)", "RPM");
        assertThat(known.rows()).hasSize(2);
        assertThat(known.columns().stream().map(Column::use))
                .containsExactly(
                        Column.Use.READ,
                        Column.Use.READ,
                        Column.Use.NOT_RECOGNISED,
                        Column.Use.UNKNOWN_UNIT,
                        Column.Use.REPEATED);
        assertThat(known.columns().get(1).unitFrom()).isEqualTo(Column.UnitFrom.UNIT_ROW);

        Preview unknown = preview("ch1,ch2\n1,2\n3,4\n");
        assertThat(unknown.header()).containsExactly("ch1", "ch2");
        assertThat(unknown.columns())
                .allSatisfy(column -> assertThat(column.use()).isEqualTo(Column.Use.NOT_RECOGNISED));
        assertThat(unknown.hasTime()).isFalse();

        Preview readings = preview("time,parameter,value\n0,RPM,800\n0,noise,3\n");
        assertThat(readings.isOneRowAReading()).isTrue();
        assertThat(readings.columns().stream().map(Column::name)).containsExactly("time", "RPM", "noise");
        assertThat(preview("RPM,MAF\n800,4\n").hasTime()).isFalse();
        assertThatThrownBy(() -> preview("no table")).isInstanceOf(RefusedLogException.class);
    }

    private static Preview preview(String text) throws IOException, RefusedLogException {
        return DriveLogs.preview(
                new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)),
                ReadRequest.PLAIN.withColumns(Map.of()));
    }
}
