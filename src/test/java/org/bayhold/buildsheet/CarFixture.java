package org.bayhold.buildsheet;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.stream.Stream;
import org.bayhold.buildsheet.Fact.Action;
import org.bayhold.buildsheet.Fact.Outcome;
import org.bayhold.buildsheet.Fact.Source;
import org.bayhold.calibration.Revision;
import org.bayhold.catalog.Category;
import org.bayhold.catalog.CategoryMove;
import org.bayhold.catalog.EffectGroups;
import org.bayhold.catalog.Place;
import org.bayhold.drivelog.Verdict;
import org.bayhold.journal.Personal;
import org.bayhold.obd.Reading;
import org.bayhold.obd.TroubleCode;
import org.bayhold.vehicle.Baseline;
import org.bayhold.vehicle.Registration;
import org.jspecify.annotations.Nullable;

/**
 * A car and its record, written one legal fact after another. Each fact happens an hour after the last was recorded, and
 * is recorded at once; {@link #at} says that the last one happened at another time, and makes it a late record where that
 * time is past. What the shop would refuse, this refuses with an {@link IllegalStateException}.
 */
public final class CarFixture {
    /** When the shop opened: every revision is issued and every car registered then, unless said otherwise. */
    public static final Instant OPENING = Instant.parse("2026-01-05T08:00:00Z");

    public static final String ECU_HARDWARE = "HW-1";
    public static final UUID TECHNICIAN = new UUID(1, 1);
    public static final UUID CALIBRATOR = new UUID(1, 2);
    public static final UUID MANAGER = new UUID(1, 3);
    public static final Personal WORDS = new Personal(new UUID(1, 9), "00");

    private static final UUID VEHICLE = new UUID(2, 1);

    private final Baseline baseline;
    private final List<Fact> settled = new ArrayList<>();
    private final Map<UUID, Revision> revisions = new LinkedHashMap<>();
    private final List<CategoryMove> moves = new ArrayList<>();
    private Reading factoryReading = Reading.NOTHING;
    private @Nullable Fact last;

    private CarFixture(Baseline baseline) {
        this.baseline = baseline;
    }

    /** Factory parts, factory calibration, which nobody has read yet. */
    public static CarFixture aCar() {
        return new CarFixture(Baseline.FACTORY);
    }

    public static CarFixture aCarOfUnknownPast() {
        return new CarFixture(Baseline.UNKNOWN);
    }

    /** Part specs are only ids here: the same name is the same part. */
    public static UUID part(String name) {
        return UUID.nameUUIDFromBytes(("part " + name).getBytes(StandardCharsets.UTF_8));
    }

    public CarFixture registeredWith(Reading reading) {
        factoryReading = reading;
        return this;
    }

    /** Revisions of the shop that no fact of the car cites. */
    public CarFixture knowing(Revision... issued) {
        Stream.of(issued).forEach(revision -> revisions.put(revision.id(), revision));
        return this;
    }

    /** A manager moves a category to NO_EFFECT, or back, from this moment on. */
    public CarFixture moved(Category category, boolean noEffect, String time) {
        moves.add(new CategoryMove(category, noEffect, Instant.parse(time), Instant.parse(time)));
        return this;
    }

    public CarFixture fitted(Category category, UUID part) {
        return fitted(Place.of(category), part);
    }

    public CarFixture fitted(Place place, UUID part) {
        return work(place, Action.FIT, part, null);
    }

    public CarFixture fittedSomethingUnknown(Category category) {
        return work(Place.of(category), Action.FIT, null, null);
    }

    /** @param hardware null where the number was left out */
    public CarFixture fittedEcu(UUID part, @Nullable String hardware) {
        return work(Place.of(Category.ECU), Action.FIT, part, hardware);
    }

    public CarFixture removed(Category category) {
        return work(Place.of(category), Action.REMOVE, null, null);
    }

    public CarFixture putBackToStock(Category category) {
        return work(Place.of(category), Action.REFIT_FACTORY, null, null);
    }

    public CarFixture adjusted(Category category) {
        return work(Place.of(category), Action.ADJUST, null, null);
    }

    private CarFixture work(Place place, Action action, @Nullable UUID part, @Nullable String hardware) {
        Personal note = action == Action.FIT && part == null ? WORDS : null;
        return add(new Fact.PartChanged(
                next(TECHNICIAN), place, action, part, null, hardware, Source.SHOP, null, null, note));
    }

    /** An inspection of one place. */
    public CarFixture found(Category category, Fitted fitted) {
        return inspected(Map.of(Place.of(category), fitted));
    }

    /** An inspection of the main place of every category. */
    public CarFixture foundStockThroughout() {
        Map<Place, Fitted> all = new LinkedHashMap<>();
        Stream.of(Category.values()).forEach(category -> all.put(Place.of(category), Fitted.FACTORY));
        return inspected(all);
    }

    public CarFixture inspected(Map<Place, Fitted> found) {
        List<Fact.Inspected.Line> lines = found.entrySet().stream()
                .map(line -> new Fact.Inspected.Line(
                        line.getKey(), line.getValue().state(), line.getValue().partSpecId()))
                .toList();
        return add(new Fact.Inspected(next(TECHNICIAN), lines, Source.SHOP, null, null));
    }

    public CarFixture flashedWith(Revision revision) {
        return knowing(revision).flash(revision.id(), Outcome.COMPLETED, Source.SHOP);
    }

    public CarFixture failedToFlash(Revision revision) {
        return knowing(revision).flash(revision.id(), Outcome.FAILED, Source.SHOP);
    }

    /** A dealer's update, or the customer's own file. */
    public CarFixture flashedByOthers() {
        return flash(null, Outcome.COMPLETED, Source.CUSTOMER_REPORTED);
    }

    private CarFixture flash(@Nullable UUID revision, Outcome outcome, Source source) {
        Personal note = revision == null ? WORDS : null;
        return add(new Fact.Flashed(next(CALIBRATOR), revision, outcome, source, true, null, null, note));
    }

    public CarFixture readBack(Revision shown) {
        return readBack(shown.reading());
    }

    public CarFixture readBack(Reading shown) {
        return add(new Fact.ReadBack(next(TECHNICIAN), shown, null, null, Source.SHOP, null, null));
    }

    /** An ECU check that asked for the stored trouble codes too. */
    public CarFixture readBackWithCodes(Revision shown, String... codes) {
        List<TroubleCode> stored = Stream.of(codes)
                .map(code -> TroubleCode.of(code, TroubleCode.Kind.STORED))
                .toList();
        return add(new Fact.ReadBack(next(TECHNICIAN), shown.reading(), stored, null, Source.SHOP, null, null));
    }

    /** A drive with what is in the ECU, driven by the shop. */
    public CarFixture drove(@Nullable Revision with, Verdict verdict) {
        return drove(with, null, verdict);
    }

    public CarFixture drove(@Nullable Revision with, @Nullable String map, Verdict verdict) {
        return add(MadeLogs.log(next(TECHNICIAN), null, with == null ? null : with.id(), map, verdict, Source.SHOP));
    }

    /** Another judgement of the last drive, at the time at which it was driven. */
    public CarFixture judgedAgain(Verdict verdict) {
        DriveLogged drive = (DriveLogged) Objects.requireNonNull(last);
        Stamp stamp = next(TECHNICIAN);
        Stamp then = new Stamp(
                stamp.id(), stamp.vehicleId(), stamp.seq(), last.stamp().effectiveAt(), stamp.recordedAt(), stamp.by());
        return add(MadeLogs.log(then, drive.drive(), drive.calibrationId(), drive.map(), verdict, Source.SHOP));
    }

    public CarFixture acknowledged() {
        return add(new Fact.Acknowledged(next(TECHNICIAN), Fact.Usage.STREET, WORDS, null));
    }

    public CarFixture arrived() {
        return add(new Fact.Arrived(next(TECHNICIAN), null, null));
    }

    public CarFixture handedOver() {
        return add(new Fact.HandedOver(next(MANAGER), Fact.HandoffBasis.CLEAR, null, null, 0, "{}", null));
    }

    public CarFixture tookAnException(Fact.Travel travel) {
        Fact.Release release = new Fact.Release(WORDS, travel, WORDS, null, null, null, null);
        return add(new Fact.HandedOver(next(MANAGER), Fact.HandoffBasis.EXCEPTION, null, release, 1, "{}", null));
    }

    public CarFixture struckOut(UUID record) {
        return add(new Fact.Voided(next(MANAGER), record, WORDS, null));
    }

    /** A retune item that the last fact caused. */
    public CarFixture openedFor(Cause.Code code, UUID item) {
        List<Cause> causes = List.of(cause(code, last));
        return add(new Fact.RetuneOpened(next(MANAGER), item, causes));
    }

    public CarFixture joinedFor(Cause.Code code, UUID item) {
        List<Cause> causes = List.of(cause(code, last));
        return add(new Fact.RetuneJoined(next(MANAGER), item, causes));
    }

    private static Cause cause(Cause.Code code, @Nullable Fact of) {
        Stamp stamp = Objects.requireNonNull(of).stamp();
        return new Cause(code, stamp.id(), stamp.effectiveAt());
    }

    public CarFixture signedOff(UUID item, Fact.ClearanceBasis basis) {
        return add(new Fact.Cleared(next(CALIBRATOR), item, basis, null, List.of(), null));
    }

    public CarFixture lapsed(UUID item) {
        return add(new Fact.RetuneLapsed(next(MANAGER), item));
    }

    /** The last fact happened at {@code time}; it was recorded then, or right after the one before it if that is later. */
    public CarFixture at(String time) {
        Instant happened = Instant.parse(time);
        Instant soonest = recorded().lastRecordedAt().plus(Duration.ofMinutes(1));
        return redated(happened, happened.isBefore(soonest) ? soonest : happened);
    }

    /** The last fact was recorded at {@code time}. */
    public CarFixture recordedAt(String time) {
        return redated(Objects.requireNonNull(last).stamp().effectiveAt(), Instant.parse(time));
    }

    private CarFixture redated(Instant happened, Instant recorded) {
        Stamp was = Objects.requireNonNull(last).stamp();
        last = Restamp.of(last, new Stamp(was.id(), VEHICLE, was.seq(), happened, recorded, was.by()));
        return this;
    }

    /** The last fact is the customer's word. */
    public CarFixture asReported() {
        last = LegalMoves.reported(Objects.requireNonNull(last));
        return this;
    }

    public UUID lastId() {
        return Objects.requireNonNull(last).stamp().id();
    }

    /** The record so far. */
    public MadeCar made() {
        List<Fact> facts = new ArrayList<>(settled);
        if (last != null) {
            LegalMoves.check(last, recorded());
            facts.add(last);
        }
        return recorded().with(facts);
    }

    private MadeCar recorded() {
        return new MadeCar(
                new Registration(VEHICLE, baseline, ECU_HARDWARE, factoryReading, OPENING),
                settled,
                List.copyOf(revisions.values()),
                new EffectGroups(moves));
    }

    private Stamp next(UUID by) {
        if (last != null) {
            LegalMoves.check(last, recorded());
            settled.add(last);
        }
        Instant time = recorded().lastRecordedAt().plus(Duration.ofHours(1));
        long seq = settled.size() + 1;
        return new Stamp(new UUID(3, seq), VEHICLE, seq, time, time, by);
    }

    private CarFixture add(Fact fact) {
        last = fact;
        return this;
    }
}
