package org.bayhold.drivelog;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;

/** Small logs for tests, as text, and what becomes of them. */
final class Logs {
    private Logs() {}

    static Judgement judge(String text) {
        return judge(text, EngineFacts.UNKNOWN);
    }

    static Judgement judge(String text, EngineFacts facts) {
        return judge(text, ReadRequest.PLAIN, facts);
    }

    static Judgement judge(String text, ReadRequest request, EngineFacts facts) {
        try {
            return judge(text.getBytes(StandardCharsets.UTF_8), request, facts);
        } catch (RefusedLogException e) {
            throw new AssertionError(e.getMessage(), e);
        }
    }

    static Judgement judge(byte[] bytes, ReadRequest request, EngineFacts facts) throws RefusedLogException {
        try {
            return DriveLogs.judge(new ByteArrayInputStream(bytes), request, facts, Thresholds.DEFAULTS, read -> {});
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }

    static RefusedLogException refusal(String text, ReadRequest request) {
        return refusal(text.getBytes(StandardCharsets.UTF_8), request);
    }

    static RefusedLogException refusal(byte[] bytes, ReadRequest request) {
        try {
            Judgement judgement = judge(bytes, request, EngineFacts.UNKNOWN);
            throw new AssertionError("It was judged: " + judgement.quality());
        } catch (RefusedLogException refused) {
            return refused;
        }
    }

    static Quality quality(String text) {
        return judge(text).quality();
    }

    static String of(List<MadeRow> rows) {
        return LogText.PLAIN.write(rows);
    }

    /** The plain layout without some of its columns. */
    static String without(List<MadeRow> rows, Parameter... parameters) {
        Set<Parameter> out = Set.of(parameters);
        StringBuilder text = new StringBuilder();
        for (String line : of(rows).split("\n", -1)) {
            if (!line.isEmpty()) {
                List<String> kept = new ArrayList<>();
                List<String> fields = Arrays.asList(line.split(",", -1));
                for (int i = 0; i < fields.size(); i++) {
                    if (!out.contains(LogColumn.PARAMETERS.get(i))) {
                        kept.add(fields.get(i));
                    }
                }
                text.append(String.join(",", kept)).append('\n');
            }
        }
        return text.toString();
    }
}
