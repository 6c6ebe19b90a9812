package org.bayhold.support;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import tools.jackson.databind.JsonNode;

/**
 * One registered car and what happens to it, each act done by somebody who may do it. What may be refused has a method
 * that only asks and gives back the answer.
 */
public final class Car {
    private final Shop shop;
    private final String id;
    private final Body registration;

    Car(Shop shop, String id, Body registration) {
        this.shop = shop;
        this.id = id;
        this.registration = registration;
    }

    public String id() {
        return id;
    }

    public String vin() {
        return registration.text("vin");
    }

    public String ecuHardware() {
        return registration.text("ecuHardware");
    }

    /** What the ECU answered when the car left its maker, as registered. */
    public Body factoryReading() {
        return Body.of("calid", registration.text("factoryCalid")).with("cvn", registration.text("factoryCvn"));
    }

    public String path(String below) {
        return "/vehicles/" + id + (below.isEmpty() ? "" : "/" + below);
    }

    // the work

    public Answer changes(Body partChange) {
        return shop.as(Role.WRITER).post(path("part-changes"), partChange).is(201);
    }

    public Answer fits(Part part) {
        return changes(Facts.fit(part));
    }

    public Answer isInspected(Body... lines) {
        return isInspectedAs(Facts.inspection(Arrays.asList(lines)));
    }

    public Answer isInspectedAs(Body inspection) {
        return shop.as(Role.WRITER).post(path("inspections"), inspection).is(201);
    }

    /** A line for every place with an effect: {@code found} as said, every other with its factory part. */
    public Answer isInspectedThroughout(Part... found) {
        Set<String> named = new HashSet<>();
        Arrays.stream(found).forEach(part -> named.add(part.category()));
        List<Body> factory = buildSheet("").stream()
                .map(line -> Answer.textOf(line.path("category")))
                .filter(category -> !named.contains(category))
                .map(Facts::foundFactory)
                .toList();
        Body inspection = Facts.inspection(factory);
        for (Part part : found) {
            inspection = inspection.plus("lines", Facts.foundPart(part));
        }
        return isInspectedAs(inspection);
    }

    public Answer flashes(Calibration calibration) {
        return flashes(Facts.flash(calibration));
    }

    public Answer flashes(Body flash) {
        return asksToFlash(flash).is(201);
    }

    public Answer asksToFlash(Body flash) {
        return shop.as(Role.TECH).post(path("flashes"), flash);
    }

    public Answer readsBack(Calibration calibration) {
        return readsBack(calibration.reading());
    }

    public Answer readsBack(Body reading) {
        return shop.as(Role.TECH).post(path("read-backs"), reading).is(201);
    }

    public Answer acknowledges() {
        return acknowledges(Facts.acknowledgement());
    }

    public Answer acknowledges(Body acknowledgement) {
        return shop.as(Role.WRITER)
                .post(path("acknowledgements"), acknowledgement)
                .is(201);
    }

    public Answer clears(String basis) {
        return asksToClear(basis).is(200);
    }

    /** Asks for the sign-off of the open retune item. */
    public Answer asksToClear(String basis) {
        return asksToClear(Role.CALIBRATOR, basis);
    }

    public Answer asksToClear(Role by, String basis) {
        return shop.as(by).post("/retune-items/" + openItem().id() + "/clearance", Body.of("basis", basis));
    }

    /** Flashed, read back, signed off, and the customer knows. */
    public Car isFinishedWith(Calibration calibration) {
        flashes(calibration);
        readsBack(calibration);
        if (findOpenItem().isPresent()) {
            clears("FLASHED");
        }
        acknowledges();
        gate().isClear();
        return this;
    }

    public Answer handsOver() {
        return asksToLeave(Body.empty()).is(201);
    }

    public Answer asksToLeave() {
        return asksToLeave(Body.empty());
    }

    public Answer asksToLeave(Body handoff) {
        return shop.as(Role.WRITER).post(path("handoffs"), handoff);
    }

    public Answer asksToLeaveByException(Body exception) {
        return shop.as(Role.MANAGER).post(path("handoffs"), Facts.leavingWith(exception));
    }

    public Answer strikesOut(Answer record) {
        return strikesOut(record.id(), Facts.voiding());
    }

    public Answer strikesOut(String recordId, Body voiding) {
        return asksToStrikeOut(recordId, voiding).is(200);
    }

    public Answer asksToStrikeOut(String recordId, Body voiding) {
        return shop.as(Role.MANAGER).post("/records/" + recordId + "/voiding", voiding);
    }

    // the record

    public Gate gate() {
        return gate("");
    }

    public Gate gate(Instant effectiveAt, Instant knownAt) {
        return gate("?effectiveAt=" + effectiveAt + "&knownAt=" + knownAt);
    }

    private Gate gate(String query) {
        return new Gate(shop.as(Role.WRITER).get(path("gate") + query).is(200).json());
    }

    public List<JsonNode> buildSheet(Instant effectiveAt, Instant knownAt) {
        return buildSheet("?effectiveAt=" + effectiveAt + "&knownAt=" + knownAt);
    }

    private List<JsonNode> buildSheet(String query) {
        return Answer.elements(shop.as(Role.WRITER)
                .get(path("build-sheet") + query)
                .is(200)
                .json()
                .path("lines"));
    }

    /** PART, FACTORY, NONE or UNKNOWN. */
    public String stateOf(String category) {
        return stateOf(buildSheet(""), category);
    }

    public static String stateOf(List<JsonNode> buildSheet, String category) {
        List<JsonNode> lines = buildSheet.stream()
                .filter(line -> Answer.textOf(line.path("category")).equals(category))
                .filter(line -> Answer.textOf(line.path("position")).isEmpty())
                .toList();
        assertThat(lines).as("lines of %s in %s", category, buildSheet).hasSize(1);
        return Answer.textOf(lines.get(0).path("state"));
    }

    public List<JsonNode> history() {
        return shop.as(Role.WRITER).list(path("history"));
    }

    public Optional<JsonNode> record(String recordId) {
        return history().stream()
                .filter(record -> Answer.textOf(record.path("id")).equals(recordId))
                .findFirst();
    }

    /** The ids of the records that {@code act} added. */
    public List<String> recordsAddedBy(Runnable act) {
        Set<String> before = new HashSet<>(ids());
        act.run();
        return ids().stream().filter(added -> !before.contains(added)).toList();
    }

    private List<String> ids() {
        return history().stream()
                .map(record -> Answer.textOf(record.path("id")))
                .toList();
    }

    public List<RetuneItem> items() {
        return shop.as(Role.WRITER).list(path("retune-items")).stream()
                .map(RetuneItem::new)
                .toList();
    }

    public Optional<RetuneItem> findOpenItem() {
        List<RetuneItem> open = items().stream().filter(RetuneItem::isOpen).toList();
        assertThat(open).as("at most one open item for a car").hasSizeLessThan(2);
        return open.stream().findFirst();
    }

    public RetuneItem openItem() {
        Optional<RetuneItem> open = findOpenItem();
        assertThat(open).as("an open retune item").isPresent();
        return open.orElseThrow();
    }

    public List<JsonNode> handoffs() {
        return shop.as(Role.WRITER).list(path("handoffs"));
    }
}
