package org.bayhold.support;

import java.util.Arrays;
import java.util.List;

/** A calibration revision before it is issued. */
public record RevisionDraft(Body body) {
    /** A revision for {@code ecuHardware} that is written for factory parts until it says otherwise. */
    public static RevisionDraft forEcu(String ecuHardware) {
        return new RevisionDraft(Body.of("name", Numbers.name())
                .with("revision", "1")
                .with("ecuHardware", ecuHardware)
                .with("calid", Numbers.calid())
                .with("cvn", Numbers.cvn())
                .with("fileSha256", Numbers.sha256())
                .with("purpose", "NORMAL")
                .with("assumes", Body.empty()));
    }

    public static RevisionDraft forThe(Car car) {
        return forEcu(car.ecuHardware());
    }

    /** Calibrated for any one of {@code equals}, which are equal to the calibration. */
    public RevisionDraft covers(Part... equals) {
        return coversLine(line(equals));
    }

    public RevisionDraft coversOrFactory(Part... equals) {
        return coversLine(line(equals).with("factoryAllowed", true));
    }

    public RevisionDraft coversOrNone(Part... equals) {
        return coversLine(line(equals).with("noneAllowed", true));
    }

    public RevisionDraft coversLine(Body line) {
        return new RevisionDraft(body.plus("coverage", line));
    }

    /** With one of the maps between which one selects: for these fuels, or every one that it covers. */
    public RevisionDraft withMap(String name, Part... fuels) {
        return withMap(Body.of("name", name)
                .with("fuels", Arrays.stream(fuels).map(Part::id).toList()));
    }

    public RevisionDraft withMap(Body map) {
        return new RevisionDraft(body.plus("maps", map));
    }

    public RevisionDraft with(String name, Object value) {
        return new RevisionDraft(body.with(name, value));
    }

    /** For an ECU that reports no CALID: the file is known by its hash alone. */
    public RevisionDraft knownByItsHashAlone() {
        return new RevisionDraft(body.without("calid").without("cvn"));
    }

    /** What is sent; a revision that names no part says so with an empty list. */
    public Body toSend() {
        return body.text("coverage").isEmpty() ? body.with("coverage", List.of()) : body;
    }

    private static Body line(Part... equals) {
        return Body.of("category", equals[0].category())
                .with("partSpecIds", Arrays.stream(equals).map(Part::id).toList());
    }
}
