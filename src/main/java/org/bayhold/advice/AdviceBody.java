package org.bayhold.advice;

import java.util.List;
import java.util.UUID;
import org.bayhold.buildsheet.Fact.Action;
import org.bayhold.calibration.Purpose;
import org.bayhold.calibration.Revision;
import org.bayhold.catalog.Category;
import org.bayhold.catalog.PartSpec;
import org.bayhold.gate.DecisionView.Mismatch;
import org.bayhold.gate.PredictionView;
import org.bayhold.prediction.Risk;
import org.jspecify.annotations.Nullable;

/**
 * An answer as it was given: kept whole, so that it reads the same when parts are corrected and revisions withdrawn.
 *
 * @param risk of running it all the same; null where nothing differs
 * @param software what was looked at
 * @param calibration the revision that it is; null where it is none of the shop's
 * @param needsAFlash that is not the calibration in the ECU
 * @param prediction absent where nothing differs
 * @param coveringCalibrations revisions in force that were written for exactly this
 * @param nearestCalibrations where none is: those that lack the least
 * @param secondThoughts what speaks against the part itself
 * @param cautions each beginning with its signal word, the gravest first
 */
record AdviceBody(
        Answer answer,
        @Nullable Risk risk,
        String ecuHardware,
        Software software,
        @Nullable Named calibration,
        boolean needsAFlash,
        List<Change> proposed,
        List<String> reasons,
        List<Mismatch> mismatches,
        @Nullable PredictionView prediction,
        List<Named> coveringCalibrations,
        List<Near> nearestCalibrations,
        List<String> secondThoughts,
        List<String> cautions) {

    /** A calibration revision by its name. */
    record Named(UUID id, String name, String revision, Purpose purpose) {
        static Named of(Revision revision) {
            return new Named(revision.id(), revision.name(), revision.revision(), revision.purpose());
        }
    }

    /** A revision that nearly covers it, and what it lacks. */
    record Near(Named calibration, List<Mismatch> lacks) {}

    /**
     * A proposed change.
     *
     * @param part as people name it; null where the catalogue does not know it, or none is fitted
     */
    record Change(
            Category category,
            @Nullable String position,
            Action action,
            @Nullable UUID partSpecId,
            @Nullable String part,
            @Nullable String ecuHardware) {
        static Change of(Hypothesis.Proposal proposal) {
            PartSpec part = proposal.action() == Action.FIT ? proposal.part() : null;
            return new Change(
                    proposal.place().category(),
                    proposal.place().position(),
                    proposal.action(),
                    part == null ? null : part.id(),
                    part == null ? null : part.name(),
                    proposal.ecuHardware());
        }
    }
}
