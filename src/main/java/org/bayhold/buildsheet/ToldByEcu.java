package org.bayhold.buildsheet;

import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.bayhold.journal.Text;
import org.bayhold.obd.EcuAnswers;
import org.bayhold.obd.Readiness;
import org.bayhold.obd.Reading;
import org.bayhold.obd.TroubleCode;
import org.bayhold.obd.TroubleCode.Kind;
import org.bayhold.obd.UndecodableException;
import org.bayhold.refusal.Refusal;
import org.jspecify.annotations.Nullable;

/**
 * What a request says that the ECU told, typed or pasted.
 *
 * @param troubleCodes null where nothing says which codes are stored
 */
record ToldByEcu(
        Reading reading,
        @Nullable List<TroubleCode> troubleCodes,
        @Nullable Readiness readiness) {

    /** @throws Refusal INVALID where it cannot be right, or says nothing of the software in the ECU */
    static ToldByEcu in(ReadBackRequest request) {
        Reading typed = typed(request);
        String response = Text.strip(request.response());
        if (response == null) {
            if (typed.equals(Reading.NOTHING)) {
                throw Refusal.invalid("calid", "read-back.nothing");
            }
            List<String> codes = request.troubleCodes();
            return new ToldByEcu(typed, codes == null ? null : stored(codes), null);
        }
        EcuAnswers answers = decoded(response);
        return new ToldByEcu(reading(typed, answers), codes(request.troubleCodes(), answers), answers.readiness());
    }

    private static Reading typed(ReadBackRequest request) {
        String calid = Text.strip(request.calid());
        String cvn = Text.upper(request.cvn());
        if ((calid == null) != (cvn == null)) {
            throw Refusal.invalid(calid == null ? "calid" : "cvn", "read-back.calid-and-cvn");
        }
        return new Reading(calid, cvn, Text.lower(request.fileSha256()));
    }

    private static EcuAnswers decoded(String response) {
        try {
            return EcuAnswers.decode(response);
        } catch (UndecodableException e) {
            throw Refusal.invalid(
                    "response", "read-back.undecodable", e.line(), e.flaw().sentence());
        }
    }

    /** Of one way only; answers that tell of codes alone may stand beside what is typed. */
    private static Reading reading(Reading typed, EcuAnswers answers) {
        Reading told = answers.reading();
        if (!typed.equals(Reading.NOTHING)) {
            if (!told.equals(Reading.NOTHING)) {
                throw Refusal.invalid("response", "read-back.one-way");
            }
            return typed;
        }
        if (told.calid() == null || told.cvn() == null) {
            boolean codesAlone =
                    told.equals(Reading.NOTHING) && (!answers.told().isEmpty() || answers.readiness() != null);
            throw Refusal.invalid("response", codesAlone ? "read-back.codes-alone" : "read-back.no-calid");
        }
        return told;
    }

    /** The pending ones alone would pass for a clean record: whoever tells of codes tells of the stored ones. */
    private static @Nullable List<TroubleCode> codes(@Nullable List<String> typed, EcuAnswers answers) {
        boolean told = answers.told().contains(Kind.STORED);
        if (typed != null && told) {
            throw Refusal.invalid("troubleCodes", "read-back.codes-one-way");
        }
        if (typed == null && !told) {
            if (!answers.told().isEmpty()) {
                throw Refusal.invalid("response", "read-back.no-stored-codes");
            }
            return null;
        }
        return typed == null
                ? answers.codes()
                : Stream.concat(stored(typed).stream(), answers.codes().stream())
                        .toList();
    }

    private static List<TroubleCode> stored(List<String> typed) {
        return typed.stream()
                .map(code -> code.toUpperCase(Locale.ROOT))
                .distinct()
                .sorted()
                .map(code -> TroubleCode.of(code, Kind.STORED))
                .toList();
    }
}
