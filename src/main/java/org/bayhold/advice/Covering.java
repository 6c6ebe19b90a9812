package org.bayhold.advice;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.bayhold.buildsheet.CarState;
import org.bayhold.buildsheet.Coverage;
import org.bayhold.buildsheet.Coverage.Gap;
import org.bayhold.calibration.Calibrations;
import org.bayhold.calibration.Purpose;
import org.bayhold.calibration.Revision;
import org.springframework.stereotype.Component;

/** The revisions in force that would cover a car as it might be, and those that nearly would. */
@Component
class Covering {
    private static final int MOST = 10;
    private static final int NEAREST = 3;

    private final Calibrations calibrations;

    Covering(Calibrations calibrations) {
        this.calibrations = calibrations;
    }

    /** @param gaps what it lacks; empty where it covers the car */
    record Candidate(Revision revision, List<Gap> gaps) {
        Candidate {
            gaps = List.copyOf(gaps);
        }
    }

    /** Those that cover the car, the newest first; where none does, the few that lack the least. */
    List<Candidate> of(Hypothesis car) {
        CarState after = car.after();
        List<Candidate> candidates = calibrations.issuedFor(after.ecuHardware()).stream()
                .filter(revision -> revision.purpose() != Purpose.TRANSFER)
                .filter(revision -> !revision.isWithdrawn(after.effectiveAt(), after.knownAt()))
                .map(revision -> new Candidate(revision, Coverage.gaps(after, Optional.of(revision), car.groups())))
                .sorted(Comparator.comparingInt(candidate -> candidate.gaps().size()))
                .toList();
        List<Candidate> covering = candidates.stream()
                .filter(candidate -> candidate.gaps().isEmpty())
                .limit(MOST)
                .toList();
        return covering.isEmpty() ? candidates.stream().limit(NEAREST).toList() : covering;
    }
}
