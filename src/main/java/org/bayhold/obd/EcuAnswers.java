package org.bayhold.obd;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.bayhold.obd.TroubleCode.Kind;
import org.jspecify.annotations.Nullable;

/**
 * All that a pasted text says: the identity of the software (service 09), trouble codes (03, 07, 0A) and monitors (01), in
 * any order and mixture, in the forms that {@link Service09} names.
 *
 * @param reading {@link Reading#NOTHING} where no ECU told of its software
 * @param told the kinds of codes that some ECU answered for, be it with none
 * @param codes by kind, then by code
 * @param givenUp messages of service 09 that were lost on the way, and refusals of any of these services
 */
public record EcuAnswers(
        Reading reading,
        Set<Kind> told,
        List<TroubleCode> codes,
        @Nullable Readiness readiness,
        List<Service09.GivenUp> givenUp) {
    public EcuAnswers {
        told = Set.copyOf(told);
        codes = List.copyOf(codes);
        givenUp = List.copyOf(givenUp);
    }

    /**
     * Reads at most 65,536 characters and 2,000 lines.
     *
     * @throws UndecodableException when a line is not of this form, two answers of one ECU contradict each other, a list of
     *     codes is not whole, or no complete answer is left; never anything else
     */
    public static EcuAnswers decode(String text) throws UndecodableException {
        Findings findings = Service09.read(text);
        Diagnosis diagnosis = findings.diagnosis();
        diagnosis.end();
        Map<Kind, Set<String>> codes = diagnosis.codes();
        Readiness readiness = diagnosis.readiness();
        List<Service09.GivenUp> givenUp = Stream.concat(findings.givenUp().stream(), diagnosis.refused().stream())
                .toList();
        boolean identified = findings.saidAnything();
        if (!identified && codes.isEmpty() && readiness == null) {
            throw givenUp.isEmpty()
                    ? new UndecodableException(Flaw.NO_ANSWER, 0)
                    : new UndecodableException(
                            givenUp.get(0).flaw(), givenUp.get(0).line());
        }
        return new EcuAnswers(
                identified ? findings.answer().reading() : Reading.NOTHING,
                codes.keySet(),
                codes.entrySet().stream()
                        .flatMap(kind -> kind.getValue().stream().map(code -> TroubleCode.of(code, kind.getKey())))
                        .toList(),
                readiness,
                givenUp);
    }
}
