package org.bayhold.buildsheet;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.UUID;
import java.util.stream.Stream;
import org.bayhold.calibration.CoverageLine;
import org.bayhold.calibration.Purpose;
import org.bayhold.calibration.Revision;
import org.bayhold.catalog.Category;
import org.bayhold.catalog.CategoryMove;
import org.bayhold.catalog.EffectGroups;
import org.bayhold.catalog.Place;
import org.bayhold.obd.Reading;
import org.bayhold.obd.TroubleCode;
import org.bayhold.vehicle.Baseline;
import org.bayhold.vehicle.Registration;
import org.jspecify.annotations.Nullable;

/**
 * Histories from a seed: few places, few parts, few software identities and a coarse clock, so that facts meet, tie and
 * contradict each other often. What others did is recorded as it was, so a history may hold what no shop would do.
 */
public final class RandomHistories {
    static final Instant START = Instant.parse("2026-01-05T08:00:00Z");
    static final int MOST_FACTS = 60;

    private static final List<Place> PLACES = List.of(
            Place.of(Category.AIR_INTAKE),
            Place.of(Category.INJECTORS),
            new Place(Category.INJECTORS, "second rail"),
            Place.of(Category.TURBOCHARGER),
            Place.of(Category.FUEL),
            Place.of(Category.ECU),
            Place.of(Category.COSMETIC));
    private static final List<Category> MOVED =
            List.of(Category.AIR_INTAKE, Category.TURBOCHARGER, Category.COSMETIC, Category.FUEL, Category.ECU);
    private static final List<String> HARDWARE = List.of("HW-1", "HW-2");
    private static final List<Reading> READINGS = List.of(
            new Reading("CAL-A", "0000000A", null),
            new Reading("CAL-A", "0000000B", null),
            new Reading("CAL-B", "0000000B", "bb"),
            new Reading(null, null, "bb"),
            new Reading(null, null, "cc"));

    private final SplittableRandom random;

    /** Everything that a fold is asked with, but the two times. */
    public record History(
            long seed,
            Registration registration,
            List<Fact> facts,
            List<Revision> revisions,
            List<CategoryMove> moves) {
        History with(List<Fact> other) {
            return new History(seed, registration, other, revisions, moves);
        }

        public CarRecord record() {
            return new CarRecord(registration, facts, revisions, new EffectGroups(moves), List.of());
        }

        CarState fold(Moments when) {
            return Fold.at(registration, facts, revisions, new EffectGroups(moves), when.effectiveAt(), when.knownAt());
        }

        BruteForceCar search(Moments when) {
            return new BruteForceCar(registration, facts, revisions, moves, when.effectiveAt(), when.knownAt());
        }
    }

    /** The two times of a question. */
    public record Moments(Instant effectiveAt, Instant knownAt) {}

    RandomHistories(long seed) {
        this.random = new SplittableRandom(seed);
    }

    public static History of(long seed) {
        return new RandomHistories(seed).history(seed);
    }

    private History history(long seed) {
        List<Revision> revisions = new ArrayList<>();
        int issued = random.nextInt(2, 7);
        for (int i = 0; i < issued; i++) {
            revisions.add(revision(i));
        }
        List<CategoryMove> moves = new ArrayList<>();
        for (int i = random.nextInt(4); i > 0; i--) {
            Instant recordedAt = moment();
            moves.add(new CategoryMove(oneOf(MOVED), random.nextBoolean(), before(recordedAt), recordedAt));
        }
        Registration registration = new Registration(
                id(),
                random.nextBoolean() ? Baseline.FACTORY : Baseline.UNKNOWN,
                oneOf(HARDWARE),
                oneIn(3) ? oneOf(READINGS) : Reading.NOTHING,
                START);
        List<Fact> facts =
                new RandomFacts(this, registration.vehicleId(), revisions).upTo(random.nextInt(1, MOST_FACTS + 1));
        return new History(seed, registration, facts, revisions, moves);
    }

    private Revision revision(int number) {
        List<CoverageLine> coverage = new ArrayList<>();
        for (Place place : PLACES) {
            if (oneIn(2)) {
                List<UUID> parts = PARTS.stream().filter(part -> oneIn(2)).toList();
                coverage.add(new CoverageLine(place, parts, oneIn(3), oneIn(3)));
            }
        }
        Instant issuedAt = oneIn(2) ? START : moment();
        return new Revision(
                id(),
                "Calibration",
                "r" + number,
                oneIn(4) ? "HW-2" : "HW-1",
                oneOf(READINGS),
                oneOf(List.of(Purpose.values())),
                coverage,
                List.of(),
                false,
                issuedAt,
                oneIn(3) ? issuedAt.plus(minutes(600)) : null);
    }

    /** Few enough for the same part to come again; any of them may sit anywhere. */
    static final List<UUID> PARTS = List.of(new UUID(7, 1), new UUID(7, 2));

    /** Two times to ask about: those of facts, a moment beside them, any. */
    static List<Moments> questions(History history, int count) {
        RandomHistories picks = new RandomHistories(~history.seed());
        List<Moments> questions = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            questions.add(new Moments(picks.question(history.facts()), picks.question(history.facts())));
        }
        return questions;
    }

    private Instant question(List<Fact> facts) {
        Stamp stamp = oneOf(facts).stamp();
        return switch (random.nextInt(6)) {
            case 0 -> stamp.effectiveAt();
            case 1 -> stamp.recordedAt();
            case 2 -> stamp.effectiveAt().minusNanos(1_000);
            case 3 -> facts.get(facts.size() - 1).stamp().recordedAt().minusNanos(1_000);
            case 4 -> moment();
            default -> facts.get(facts.size() - 1).stamp().recordedAt().plusSeconds(86_400);
        };
    }

    Place place() {
        return oneOf(PLACES);
    }

    @Nullable List<TroubleCode> codes() {
        return oneIn(2)
                ? null
                : Stream.of("P0171", "P0420", "P1234")
                        .filter(code -> oneIn(4))
                        .map(code -> TroubleCode.of(code, TroubleCode.Kind.STORED))
                        .toList();
    }

    Reading reading() {
        return oneOf(READINGS);
    }

    @Nullable String hardware() {
        return oneIn(2) ? oneOf(HARDWARE) : null;
    }

    <T> T oneOf(List<T> all) {
        return all.get(random.nextInt(all.size()));
    }

    boolean oneIn(int chances) {
        return random.nextInt(chances) == 0;
    }

    int below(int bound) {
        return random.nextInt(bound);
    }

    UUID id() {
        return new UUID(random.nextLong(), random.nextLong());
    }

    Duration minutes(int most) {
        return Duration.ofMinutes(random.nextInt(1, most + 1));
    }

    /** Any time of the ten hours or so that a history of {@link #MOST_FACTS} facts takes. */
    Instant moment() {
        return START.plus(minutes(MOST_FACTS * 10));
    }

    /** A time no later than {@code recordedAt}, often that very time. */
    Instant before(Instant recordedAt) {
        long since = Duration.between(START, recordedAt).toMinutes();
        return oneIn(2) ? recordedAt : START.plus(Duration.ofMinutes(random.nextLong(since + 1)));
    }
}
