package org.bayhold.support;

import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;

/** The bodies of what people record, in their own words. All people, makers and cars are invented. */
public final class Facts {
    private Facts() {}

    /** A factory car whose factory CALID and CVN are on record. */
    public static Body aCar() {
        return Body.of("vin", Vins.next())
                .with("description", "Northwind 2.0 hatchback")
                .with("engine", "NW20T")
                .with("displacementCc", 1984)
                .with("cylinders", 4)
                .with("ecuHardware", Numbers.ecuHardware())
                .with("plate", "B-" + Numbers.partNumber())
                .with("odometerKm", 48_200)
                .with("customer", aCustomer())
                .with("baseline", "FACTORY")
                .with("factoryCalid", Numbers.calid())
                .with("factoryCvn", Numbers.cvn());
    }

    /** A factory car of which nobody wrote down what its ECU reports. */
    public static Body aCarWithoutFactoryReading() {
        return aCar().without("factoryCalid").without("factoryCvn");
    }

    public static Body aCarOfUnknownHistory() {
        return aCarWithoutFactoryReading().with("baseline", "UNKNOWN");
    }

    public static Body aCustomer() {
        return Body.of("name", "Ines Halvorsen").with("phone", "+1 555 0142").with("email", "ines@customer.example");
    }

    public static Body aPart(String category) {
        return Body.of("category", category)
                .with("maker", "Kestrel Parts")
                .with("partNumber", Numbers.partNumber())
                .with("specRevision", "A")
                .with("attributes", Body.empty());
    }

    /** What is recorded of injectors: so much at 300 kPa. */
    public static Body flows(double ccPerMin) {
        return Body.of("flowCcPerMin", ccPerMin).with("ratedPressureKpa", 300);
    }

    public static Body fit(Part part) {
        return change(part.category(), "FIT").with("partSpecId", part.id());
    }

    /** A part that nobody could name. */
    /** A question about a car of the register. */
    public static Body about(Car car) {
        return Body.of("vehicleId", car.id());
    }

    /** The part, as somebody would like to have it fitted. */
    public static Body proposes(Part part) {
        return fit(part).without("source");
    }

    public static Body fitUnidentified(String category) {
        return change(category, "FIT").with("note", "no number on it, looks handmade");
    }

    public static Body remove(String category) {
        return change(category, "REMOVE");
    }

    public static Body refitFactory(String category) {
        return change(category, "REFIT_FACTORY");
    }

    public static Body adjust(String category) {
        return change(category, "ADJUST").with("note", "two turns more preload");
    }

    public static Body change(String category, String action) {
        return Body.of("category", category).with("action", action).with("source", "SHOP");
    }

    public static Body foundPart(Part part) {
        return Body.of("category", part.category()).with("state", "PART").with("partSpecId", part.id());
    }

    public static Body foundFactory(String category) {
        return Body.of("category", category).with("state", "FACTORY");
    }

    public static Body foundNone(String category) {
        return Body.of("category", category).with("state", "NONE");
    }

    public static Body inspection(List<Body> lines) {
        return Body.of("lines", lines);
    }

    public static Body flash(Calibration calibration) {
        return Body.of("calibrationId", calibration.id()).with("outcome", "COMPLETED");
    }

    public static Body failedFlash(Calibration calibration) {
        return flash(calibration).with("outcome", "FAILED").with("note", "the battery gave out");
    }

    /** A file that is not the shop's, as a dealer writes one that nobody ordered. */
    public static Body dealersUpdate() {
        return Body.of("outcome", "COMPLETED")
                .with("note", "the dealer updated it during a recall")
                .reported();
    }

    public static Body aStrangeReading() {
        return Body.of("calid", Numbers.calid()).with("cvn", Numbers.cvn());
    }

    public static Body acknowledgement() {
        return Body.of("usage", "STREET").with("signedBy", "Ines Halvorsen");
    }

    /** A car that leaves on a trailer although it is on HOLD. */
    public static Body exception() {
        return Body.of("reason", "goes to the paint shop next door")
                .with("travel", "TRAILER")
                .with("acknowledgedBy", "Ines Halvorsen");
    }

    public static Body leavingWith(Body exception) {
        return Body.of("exception", exception);
    }

    /** The same exception, signed by a second person with a token of theirs. */
    public static Body secondlySignedWith(String token, Body exception) {
        return exception.with("secondSignerToken", token);
    }

    public static Body voiding() {
        return Body.of("reason", "written down on the wrong car");
    }

    /** A moment of the recent past, cut to what every database and every hash keeps. */
    public static Instant hoursAgo(long hours) {
        return minutesAgo(60 * hours);
    }

    public static Instant minutesAgo(long minutes) {
        return Instant.now().minus(Duration.ofMinutes(minutes)).truncatedTo(ChronoUnit.MILLIS);
    }
}
