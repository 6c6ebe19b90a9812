package org.bayhold.buildsheet;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Predicate;
import org.bayhold.catalog.Place;
import org.jspecify.annotations.Nullable;

/** Which facts count, and in which order, found by asking every fact about every other (docs/rules.md, rules 7 to 9). */
final class BruteForceRecord {
    final List<Fact> known;
    final List<Said> said;

    /**
     * One thing said of the car: a fact, or one line of an inspection.
     *
     * @param at its position among all that is said
     * @param place what it speaks of; null where it speaks of no place
     * @param found what sits there from then on; null where it does not tell (an adjustment)
     */
    record Said(
            int at,
            Fact fact,
            @Nullable Place place,
            @Nullable Fitted found) {
        Instant time() {
            return fact.stamp().effectiveAt();
        }

        boolean isInspection() {
            return fact instanceof Fact.Inspected;
        }

        boolean isWorkOfTheShop() {
            return (fact instanceof Fact.PartChanged work && work.source() == Fact.Source.SHOP)
                    || (fact instanceof Fact.Inspected inspection && inspection.source() == Fact.Source.SHOP)
                    || (fact instanceof Fact.Flashed flash && flash.source() == Fact.Source.SHOP)
                    || (fact instanceof Fact.ReadBack check && check.source() == Fact.Source.SHOP)
                    || (fact instanceof DriveLogged drive && drive.source() == Fact.Source.SHOP);
        }

        boolean is(Fact.Action action) {
            return fact instanceof Fact.PartChanged work && work.action() == action;
        }
    }

    BruteForceRecord(List<Fact> facts, Instant effectiveAt, Instant knownAt) {
        known = facts.stream()
                .filter(fact -> byThen(fact.stamp().recordedAt(), knownAt))
                .toList();
        said = new ArrayList<>();
        List<Fact> live = known.stream()
                .filter(fact -> byThen(fact.stamp().effectiveAt(), effectiveAt))
                .filter(fact -> !isStruckOut(fact.stamp().id()))
                .toList();
        Fact[] inOrder = new Fact[live.size()];
        live.forEach(fact -> inOrder[howManyBefore(fact, live)] = fact);
        List.of(inOrder).forEach(this::hear);
    }

    static boolean byThen(Instant time, Instant then) {
        return time.compareTo(then) <= 0;
    }

    /** Struck out by something that is not itself struck out. When a striking-out "happened" does not matter. */
    boolean isStruckOut(UUID id) {
        for (Fact fact : known) {
            if (fact instanceof Fact.Voided strike
                    && strike.targetId().equals(id)
                    && !isStruckOut(strike.stamp().id())) {
                return true;
            }
        }
        return false;
    }

    private static int howManyBefore(Fact fact, List<Fact> live) {
        int count = 0;
        for (Fact other : live) {
            count += standsBefore(other.stamp(), fact.stamp()) ? 1 : 0;
        }
        return count;
    }

    /** The facts of one write share their time, and stand in the order of the chain. */
    private static boolean standsBefore(Stamp a, Stamp b) {
        if (!a.effectiveAt().equals(b.effectiveAt())) {
            return a.effectiveAt().isBefore(b.effectiveAt());
        }
        if (!a.recordedAt().equals(b.recordedAt())) {
            return a.recordedAt().isBefore(b.recordedAt());
        }
        // two at one place are in a chain that forked: then any order will do, but one it must be
        return a.seq() == b.seq() ? a.id().compareTo(b.id()) < 0 : a.seq() < b.seq();
    }

    private void hear(Fact fact) {
        if (fact instanceof Fact.Inspected inspection) {
            for (Fact.Inspected.Line line : inspection.lines()) {
                said.add(new Said(said.size(), fact, line.place(), new Fitted(line.state(), line.partSpecId())));
            }
        } else if (fact instanceof Fact.PartChanged work) {
            said.add(new Said(said.size(), fact, work.place(), left(work)));
        } else {
            said.add(new Said(said.size(), fact, null, null));
        }
    }

    private static @Nullable Fitted left(Fact.PartChanged work) {
        UUID part = work.partSpecId();
        return switch (work.action()) {
            case FIT -> new Fitted(part == null ? Fitted.State.UNKNOWN : Fitted.State.PART, part);
            case REMOVE -> new Fitted(Fitted.State.NONE, null);
            case REFIT_FACTORY -> new Fitted(Fitted.State.FACTORY, null);
            case ADJUST -> null;
        };
    }

    /** The last that was said, before the {@code end}th thing, of which {@code question} is true. */
    Optional<Said> last(int end, Predicate<Said> question) {
        for (int i = end - 1; i >= 0; i--) {
            if (question.test(said.get(i))) {
                return Optional.of(said.get(i));
            }
        }
        return Optional.empty();
    }

    Optional<Said> last(Predicate<Said> question) {
        return last(said.size(), question);
    }

    /** In the shop, unless a handover is the last that was heard of the car's coming and going and of the shop's work. */
    CarState.Stay stay() {
        Optional<Said> door =
                last(said -> said.fact() instanceof Fact.Arrived || said.fact() instanceof Fact.HandedOver);
        if (door.isEmpty() || door.get().fact() instanceof Fact.Arrived) {
            return new CarState.Stay(true, door.map(Said::time).orElse(null), false);
        }
        return said.subList(door.get().at() + 1, said.size()).stream()
                .filter(Said::isWorkOfTheShop)
                .findFirst()
                .map(work -> new CarState.Stay(true, work.time(), true))
                .orElseGet(() -> new CarState.Stay(false, door.get().time(), false));
    }
}
