package org.bayhold.drivelog;

import java.io.ByteArrayInputStream;
import java.io.InputStream;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.function.ToDoubleFunction;

/** Writes made drives down as loggers of our own invention might, no two of them alike. */
enum LogText {
    /** One row a sample, units in brackets. */
    PLAIN {
        @Override
        String write(List<MadeRow> rows) {
            return table(rows, ",", "\n", '.', LogColumn.ALL, true, false);
        }
    },
    /** Semicolons, decimal commas, units in a row of their own, CRLF, a byte-order mark. */
    SEMICOLONS {
        @Override
        String write(List<MadeRow> rows) {
            return "\ufeff" + table(rows, ";", "\r\n", ',', shuffled(), false, true);
        }
    },
    /** Tabs, the abbreviations of the standard, no units, UTF-16. */
    ABBREVIATIONS {
        @Override
        String write(List<MadeRow> rows) {
            return "\ufeff" + table(rows, "\t", "\r", '.', abbreviated(), false, false);
        }

        @Override
        Charset charset() {
            return StandardCharsets.UTF_16LE;
        }
    },
    /** Fahrenheit, inches of mercury, pounds a minute, miles an hour, milliseconds, every field in quotes. */
    IMPERIAL {
        @Override
        String write(List<MadeRow> rows) {
            String quoted = table(rows, ",", "\n", '.', imperial(), true, false)
                    .strip()
                    .replace(",", "\",\"")
                    .replace("\n", "\"\n\"");
            return "\"" + quoted + "\"\n";
        }
    },
    /** One row a reading. */
    READINGS {
        @Override
        String write(List<MadeRow> rows) {
            StringBuilder text = new StringBuilder("Time;Parameter;Value;Unit\n");
            for (MadeRow row : rows) {
                for (LogColumn column : LogColumn.ALL.subList(1, LogColumn.ALL.size())) {
                    text.append(clock(row.time() + 86_000))
                            .append(';')
                            .append(column.name())
                            .append(';')
                            .append(number(column.value().applyAsDouble(row), ',', column.decimals()))
                            .append(';')
                            .append(column.unit())
                            .append('\n');
                }
            }
            return text.toString();
        }
    },
    /** No time at all, Latin-1, decimal commas in quotes between commas. */
    FIXED_RATE {
        @Override
        String write(List<MadeRow> rows) {
            List<LogColumn> columns = LogColumn.ALL.subList(1, LogColumn.ALL.size());
            StringBuilder text = new StringBuilder();
            for (LogColumn column : columns) {
                text.append(text.length() == 0 ? "" : ",")
                        .append(column.name())
                        .append(" [")
                        .append(column.unit().equals("C") ? "\u00b0C" : column.unit())
                        .append(']');
            }
            text.append("\r\n");
            for (MadeRow row : rows) {
                for (LogColumn column : columns) {
                    text.append(column == columns.get(0) ? "\"" : ",\"")
                            .append(number(column.value().applyAsDouble(row), ',', column.decimals()))
                            .append('"');
                }
                text.append("\r\n");
            }
            return text.toString();
        }

        @Override
        Charset charset() {
            return StandardCharsets.ISO_8859_1;
        }

        @Override
        ReadRequest request() {
            return ReadRequest.PLAIN.withSampleSeconds(0.1);
        }
    },
    /** Notes above the header, dates, columns that nobody knows, values with blanks around them. */
    NOTES_ABOVE {
        @Override
        String write(List<MadeRow> rows) {
            StringBuilder text = new StringBuilder("Drive of the blue estate\nlogged by: Ines; weather: dry\n\n");
            text.append("Date and cell | Timestamp ");
            for (LogColumn column : LogColumn.ALL.subList(1, LogColumn.ALL.size())) {
                text.append("| ")
                        .append(column.name())
                        .append(", ")
                        .append(column.unit())
                        .append(' ');
            }
            text.append("| cabin noise (dB)\n");
            for (MadeRow row : rows) {
                text.append("7 | 2026-11-25T")
                        .append(clock(row.time() + 40_000))
                        .append("+01:00 ");
                for (LogColumn column : LogColumn.ALL.subList(1, LogColumn.ALL.size())) {
                    text.append("| ")
                            .append(number(column.value().applyAsDouble(row), '.', column.decimals()))
                            .append(' ');
                }
                text.append("| loud\n");
            }
            return text.toString();
        }
    },
    /** Names of the shop's own. */
    MAPPED {
        @Override
        String write(List<MadeRow> rows) {
            List<LogColumn> columns = new ArrayList<>();
            for (LogColumn column : LogColumn.ALL) {
                columns.add(new LogColumn("ch-" + columns.size(), column.unit(), column.decimals(), column.value()));
            }
            return table(rows, ";", "\n", '.', columns, false, false);
        }

        @Override
        ReadRequest request() {
            Map<String, MappedColumn> mapping = new HashMap<>();
            for (int i = 0; i < LogColumn.ALL.size(); i++) {
                mapping.put("CH-" + i, new MappedColumn(LogColumn.PARAMETERS.get(i), null));
            }
            return ReadRequest.PLAIN.withColumns(mapping);
        }
    };

    private static final List<String> ABBREVIATED = List.of(
            "TIME",
            "RPM",
            "LOAD_PCT",
            "ECT",
            "IAT",
            "MAP",
            "MAF",
            "TP",
            "APP_D",
            "SHRTFT1",
            "LONGFT1",
            "SHRTFT2",
            "LONGFT2",
            "FUELSYS1",
            "EQ_RAT",
            "EQ_RAT11",
            "KNOCK RETARD",
            "VSS",
            "INJ PW");

    abstract String write(List<MadeRow> rows);

    Charset charset() {
        return StandardCharsets.UTF_8;
    }

    ReadRequest request() {
        return ReadRequest.PLAIN;
    }

    InputStream stream(List<MadeRow> rows) {
        return new ByteArrayInputStream(write(rows).getBytes(charset()));
    }

    private static List<LogColumn> shuffled() {
        List<LogColumn> shuffled = new ArrayList<>(LogColumn.ALL);
        Collections.shuffle(shuffled, new Random(5));
        return shuffled;
    }

    private static List<LogColumn> abbreviated() {
        List<LogColumn> columns = new ArrayList<>();
        for (LogColumn column : LogColumn.ALL) {
            columns.add(
                    new LogColumn(ABBREVIATED.get(columns.size()), column.unit(), column.decimals(), column.value()));
        }
        return columns;
    }

    private static List<LogColumn> imperial() {
        List<LogColumn> columns = new ArrayList<>();
        for (LogColumn column : LogColumn.ALL) {
            ToDoubleFunction<MadeRow> value = column.value();
            columns.add(
                    0,
                    switch (column.unit()) {
                        case "s" -> new LogColumn(column.name(), "ms", 0, row -> value.applyAsDouble(row) * 1_000);
                        case "C" ->
                            new LogColumn(column.name(), "deg F", 1, row -> value.applyAsDouble(row) * 1.8 + 32);
                        case "kPa" ->
                            new LogColumn(column.name(), "inHg", 2, row -> value.applyAsDouble(row) / 3.386389);
                        case "g/s" ->
                            new LogColumn(column.name(), "lb/min", 4, row -> value.applyAsDouble(row) * 60 / 453.59237);
                        case "km/h" ->
                            new LogColumn(column.name(), "mph", 2, row -> value.applyAsDouble(row) / 1.609344);
                        default -> column;
                    });
        }
        return columns;
    }

    private static String table(
            List<MadeRow> rows,
            String separator,
            String newline,
            char decimal,
            List<LogColumn> columns,
            boolean inHeader,
            boolean inRow) {
        StringBuilder text = new StringBuilder();
        for (LogColumn column : columns) {
            text.append(column == columns.get(0) ? "" : separator).append(column.name());
            if (inHeader && !column.unit().isEmpty()) {
                text.append(" (").append(column.unit()).append(')');
            }
        }
        text.append(newline);
        if (inRow) {
            for (LogColumn column : columns) {
                text.append(column == columns.get(0) ? "" : separator).append(column.unit());
            }
            text.append(newline);
        }
        for (MadeRow row : rows) {
            for (LogColumn column : columns) {
                text.append(column == columns.get(0) ? "" : separator)
                        .append(number(column.value().applyAsDouble(row), decimal, column.decimals()));
            }
            text.append(newline);
        }
        return text.toString();
    }

    private static String number(double value, char decimal, int decimals) {
        long tens = Math.round(Math.pow(10, decimals));
        long whole = Math.round(Math.abs(value) * tens);
        String text = (value < 0 && whole != 0 ? "-" : "") + whole / tens;
        if (decimals == 0) {
            return text;
        }
        String fraction = Long.toString(tens + whole % tens).substring(1);
        return text + decimal + fraction;
    }

    private static String clock(double seconds) {
        long millis = Math.round(seconds * 1_000) % 86_400_000;
        return String.format(
                Locale.ROOT,
                "%02d:%02d:%02d.%03d",
                millis / 3_600_000,
                millis / 60_000 % 60,
                millis / 1_000 % 60,
                millis % 1_000);
    }
}
