package org.bayhold.drivelog;

import java.util.List;
import java.util.Set;
import org.bayhold.prediction.Risk;
import org.jspecify.annotations.Nullable;

/**
 * What a recorded drive shows. {@code docs/drive-log.md}.
 *
 * @param missing what keeps it from passing; may be there beside a FAIL
 * @param unjudged what could not be looked at, without any bearing on the verdict
 * @param findings the gravest first
 * @param fit null where the airflow is not known, or was nearly the same all the time
 * @param headroomPercent what is left of the authority at the largest steady correction; null where there is none
 * @param pulls by time; of very many some
 */
public record Judgement(
        Verdict verdict,
        List<Missing> missing,
        Set<Unjudged> unjudged,
        List<Finding> findings,
        Seconds seconds,
        TrimMap trims,
        @Nullable Fit fit,
        @Nullable Double headroomPercent,
        List<Pull> pulls,
        Quality quality) {
    public Judgement {
        missing = List.copyOf(missing);
        unjudged = Set.copyOf(unjudged);
        findings = List.copyOf(findings);
        pulls = List.copyOf(pulls);
    }

    /**
     * How long the drive was what.
     *
     * @param idle warm, in closed loop and steady, as is cruise
     */
    public record Seconds(double total, double warm, double closedLoop, double idle, double cruise, double fullLoad) {}

    /** The worst of the findings. */
    public Risk risk() {
        return findings.stream().map(Finding::risk).reduce(Risk.LOW, Risk::or);
    }

    boolean has(Finding.Code code) {
        return findings.stream().anyMatch(finding -> finding.code() == code);
    }
}
