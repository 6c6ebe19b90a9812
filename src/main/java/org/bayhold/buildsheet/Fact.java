package org.bayhold.buildsheet;

import java.util.List;
import java.util.UUID;
import org.bayhold.catalog.Place;
import org.bayhold.journal.Personal;
import org.bayhold.obd.Readiness;
import org.bayhold.obd.Reading;
import org.bayhold.obd.TroubleCode;
import org.jspecify.annotations.Nullable;

/** One dated fact of a car's record. The set is closed; a fact is never changed and never removed, only struck out. */
public sealed interface Fact
        permits Fact.Arrived,
                Fact.PartChanged,
                Fact.Inspected,
                Fact.Flashed,
                Fact.ReadBack,
                DriveLogged,
                Fact.Acknowledged,
                Fact.Voided,
                Fact.RetuneOpened,
                Fact.RetuneJoined,
                Fact.RetunePlanned,
                Fact.RetuneLapsed,
                Fact.Cleared,
                Fact.HandedOver,
                Fact.HandoffRefused {
    Stamp stamp();

    /** Calls the one method of {@code listener} that is meant for this kind of fact. */
    void tell(Listener listener);

    /** One method for each kind of fact, so that a new kind does not compile until everybody has said what it means. */
    interface Listener {
        void arrived(Arrived fact);

        void partChanged(PartChanged fact);

        void inspected(Inspected fact);

        void flashed(Flashed fact);

        void readBack(ReadBack fact);

        void driveLogged(DriveLogged fact);

        void acknowledged(Acknowledged fact);

        void voided(Voided fact);

        void retuneOpened(RetuneOpened fact);

        void retuneJoined(RetuneJoined fact);

        void retunePlanned(RetunePlanned fact);

        void retuneLapsed(RetuneLapsed fact);

        void cleared(Cleared fact);

        void handedOver(HandedOver fact);

        void handoffRefused(HandoffRefused fact);
    }

    /** The car came in. */
    record Arrived(
            Stamp stamp,
            @Nullable Integer odometerKm,
            @Nullable Personal note) implements Fact {
        @Override
        public void tell(Listener listener) {
            listener.arrived(this);
        }
    }

    /**
     * A part was fitted, removed, put back to factory, or adjusted.
     *
     * @param partSpecId null on FIT means a part not identified: its place becomes UNKNOWN
     * @param ecuHardware the new hardware number, for a change at the ECU
     */
    record PartChanged(
            Stamp stamp,
            Place place,
            Action action,
            @Nullable UUID partSpecId,
            @Nullable String serial,
            @Nullable String ecuHardware,
            Source source,
            @Nullable Integer odometerKm,
            @Nullable Personal performedBy,
            @Nullable Personal note)
            implements Fact {
        @Override
        public void tell(Listener listener) {
            listener.partChanged(this);
        }
    }

    /** What was found, place by place. */
    record Inspected(
            Stamp stamp,
            List<Line> lines,
            Source source,
            @Nullable Integer odometerKm,
            @Nullable Personal note) implements Fact {
        @Override
        public void tell(Listener listener) {
            listener.inspected(this);
        }

        public Inspected {
            lines = List.copyOf(lines);
        }

        /** @param partSpecId set exactly when {@code state} is PART */
        public record Line(
                Place place, Fitted.State state, @Nullable UUID partSpecId) {}
    }

    /**
     * A file was written to the ECU, or the attempt failed.
     *
     * @param calibrationId null where the file is not one of the shop's
     */
    record Flashed(
            Stamp stamp,
            @Nullable UUID calibrationId,
            Outcome outcome,
            Source source,
            @Nullable Boolean adaptationsReset,
            @Nullable Integer odometerKm,
            @Nullable Personal performedBy,
            @Nullable Personal note)
            implements Fact {
        @Override
        public void tell(Listener listener) {
            listener.flashed(this);
        }
    }

    /**
     * What the ECU itself reports, or the hash of the file that was read out of it.
     *
     * @param troubleCodes those that it keeps; null where it was not asked for its stored ones
     * @param readiness null where it was not asked
     */
    record ReadBack(
            Stamp stamp,
            Reading reading,
            @Nullable List<TroubleCode> troubleCodes,
            @Nullable Readiness readiness,
            Source source,
            @Nullable Personal performedBy,
            @Nullable Personal note)
            implements Fact {
        @Override
        public void tell(Listener listener) {
            listener.readBack(this);
        }

        public ReadBack {
            troubleCodes = troubleCodes == null ? null : List.copyOf(troubleCodes);
        }
    }

    /** The customer acknowledged the risk and the use of the car. */
    record Acknowledged(
            Stamp stamp,
            Usage usage,
            Personal signedBy,
            @Nullable Personal text) implements Fact {
        @Override
        public void tell(Listener listener) {
            listener.acknowledged(this);
        }
    }

    /** A wrong record was struck out; a right one may have come with it. A striking-out can itself be struck out. */
    record Voided(
            Stamp stamp,
            UUID targetId,
            Personal reason,
            @Nullable UUID replacedBy) implements Fact {
        @Override
        public void tell(Listener listener) {
            listener.voided(this);
        }
    }

    /** A retune item was opened. */
    record RetuneOpened(Stamp stamp, UUID itemId, List<Cause> causes) implements Fact {
        @Override
        public void tell(Listener listener) {
            listener.retuneOpened(this);
        }

        public RetuneOpened {
            causes = List.copyOf(causes);
        }
    }

    /** Further causes joined an open item. */
    record RetuneJoined(Stamp stamp, UUID itemId, List<Cause> causes) implements Fact {
        @Override
        public void tell(Listener listener) {
            listener.retuneJoined(this);
        }

        public RetuneJoined {
            causes = List.copyOf(causes);
        }
    }

    /** Work on an item: who does it, by when. */
    record RetunePlanned(
            Stamp stamp,
            UUID itemId,
            @Nullable Personal assignee,
            java.time.@Nullable Instant promisedAt,
            @Nullable Personal note)
            implements Fact {
        @Override
        public void tell(Listener listener) {
            listener.retunePlanned(this);
        }
    }

    /** An item closed because every cause of it was struck out and no other check failed. */
    record RetuneLapsed(Stamp stamp, UUID itemId) implements Fact {
        @Override
        public void tell(Listener listener) {
            listener.retuneLapsed(this);
        }
    }

    /**
     * A calibrator signed an item off.
     *
     * @param tokenId the signing token, for a signature over the API
     * @param evidence the records it rests on: flash, read-back, drive log
     */
    record Cleared(
            Stamp stamp,
            UUID itemId,
            ClearanceBasis basis,
            @Nullable UUID tokenId,
            List<UUID> evidence,
            @Nullable Personal note)
            implements Fact {
        @Override
        public void tell(Listener listener) {
            listener.cleared(this);
        }

        public Cleared {
            evidence = List.copyOf(evidence);
        }
    }

    /**
     * The car left.
     *
     * @param failedChecks how many checks failed then; 0 for CLEAR
     * @param decision the whole decision that stood then, as canonical JSON, with the version of the rules that made it
     * @param rules that version; null for the first
     */
    record HandedOver(
            Stamp stamp,
            HandoffBasis basis,
            @Nullable Integer odometerKm,
            @Nullable Release exception,
            int failedChecks,
            String decision,
            @Nullable Integer rules)
            implements Fact {
        @Override
        public void tell(Listener listener) {
            listener.handedOver(this);
        }

        /** The version of the rules that decided. */
        public int rulesOfThen() {
            return rules == null ? 1 : rules;
        }
    }

    /** A handover was asked for and refused. */
    record HandoffRefused(Stamp stamp, int failedChecks, String decision) implements Fact {
        @Override
        public void tell(Listener listener) {
            listener.handoffRefused(this);
        }
    }

    /** A manager's signed release of a car on HOLD. */
    record Release(
            Personal reason,
            Travel travel,
            Personal acknowledgedBy,
            @Nullable Personal limitations,
            java.time.@Nullable Instant returnBy,
            @Nullable UUID tokenId,
            @Nullable UUID secondSigner) {}

    /** FIT without a part spec is a part not identified; ADJUST is the same part at another setting. */
    enum Action {
        FIT,
        REMOVE,
        REFIT_FACTORY,
        ADJUST
    }

    /** Who did it: the shop, or somebody else as reported to it. */
    enum Source {
        SHOP,
        CUSTOMER_REPORTED
    }

    enum Outcome {
        COMPLETED,
        FAILED
    }

    enum Usage {
        STREET,
        TRACK,
        BOTH
    }

    enum ClearanceBasis {
        /** A completed flash after the last change covers the whole build sheet. */
        FLASHED,
        /** No new flash: the flashed revision covers the build sheet exactly as it stands. */
        STILL_COVERED
    }

    enum HandoffBasis {
        CLEAR,
        EXCEPTION
    }

    /** How a car on HOLD leaves. */
    enum Travel {
        DRIVEN,
        TRAILER,
        TOW
    }
}
