package org.bayhold.buildsheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.bayhold.journal.CanonicalJson;
import org.bayhold.obd.CodeTopic;
import org.bayhold.obd.Readiness;
import org.bayhold.obd.TroubleCode;
import org.jspecify.annotations.Nullable;
import org.springframework.context.MessageSource;
import org.springframework.stereotype.Component;
import tools.jackson.databind.JsonNode;

/** Trouble codes and monitors in words. */
@Component
public class CodeWords {
    private final MessageSource messages;
    private final CanonicalJson json;

    CodeWords(MessageSource messages, CanonicalJson json) {
        this.messages = messages;
        this.json = json;
    }

    /** What an ECU check brought, of a record as {@link FactViews} tells it; nothing of any other record. */
    public List<String> of(JsonNode record) {
        JsonNode codes = record.get("troubleCodes");
        JsonNode readiness = record.get("readiness");
        return of(
                codes == null || codes.isNull() ? null : List.of(json.read(codes, TroubleCode[].class)),
                readiness == null || readiness.isNull() ? null : json.read(readiness, Readiness.class));
    }

    List<String> of(@Nullable List<TroubleCode> codes, @Nullable Readiness readiness) {
        List<String> said = new ArrayList<>();
        if (codes != null) {
            said.add(
                    codes.isEmpty()
                            ? message("code.none")
                            : message("code.list", codes.stream().map(this::of).collect(Collectors.joining("; "))));
        }
        if (readiness != null) {
            said.add(message(readiness.milOn() ? "code.lamp-on" : "code.lamp-off"));
            said.add(monitors(readiness));
        }
        return said;
    }

    private String of(TroubleCode code) {
        String meaning = CodeTopic.of(code.code())
                .map(topic -> message("code.topic." + topic))
                .orElseGet(() ->
                        message(TroubleCode.isOfTheStandard(code.code()) ? "code.not-related" : "code.of-its-maker"));
        return message("code.one", code.code(), message("code.kind." + code.kind()), meaning);
    }

    private String monitors(Readiness readiness) {
        List<Readiness.State> supported = supported(readiness).toList();
        String missing = supported.stream()
                .filter(state -> !state.complete())
                .map(state -> message("code.monitor." + state.monitor()))
                .collect(Collectors.joining(", "));
        long complete = supported.stream().filter(Readiness.State::complete).count();
        return missing.isEmpty()
                ? message("code.monitors-complete", complete)
                : message("code.monitors", complete, supported.size(), missing);
    }

    static boolean isComplete(Readiness readiness) {
        return supported(readiness).allMatch(Readiness.State::complete);
    }

    private static Stream<Readiness.State> supported(Readiness readiness) {
        return readiness.monitors().stream().filter(Readiness.State::supported);
    }

    private String message(String key, Object... arguments) {
        return Objects.requireNonNull(messages.getMessage(key, arguments, key, Locale.ENGLISH));
    }
}
