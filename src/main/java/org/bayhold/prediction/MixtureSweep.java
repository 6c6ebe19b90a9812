package org.bayhold.prediction;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import org.bayhold.catalog.Category;
import org.bayhold.prediction.Prediction.Mixture;
import org.bayhold.prediction.Sweep.MixtureLine;
import org.bayhold.prediction.Sweep.Named;
import org.bayhold.prediction.Sweep.Point;
import org.bayhold.prediction.Sweep.Spot;
import org.jspecify.annotations.Nullable;

/** Lambda at one airflow after another. {@code docs/prediction.md, P18}. */
final class MixtureSweep {
    /** So that a bend of a transfer table is seen. */
    private static final int STEPS = 64;
    /** The end of a table is itself within it, give or take the rounding of its inverse. */
    private static final double INWARDS = 1e-9;

    private final Build build;
    private final Prediction prediction;
    private final List<TransferCurves> tables;
    private final double idle;
    private final double cruise;
    private final Optional<Double> peak;

    MixtureSweep(Build build, Prediction prediction) {
        this.build = build;
        this.prediction = prediction;
        Assumptions assumes = new Assumptions(build.assumes());
        this.tables = tables(build, assumes);
        this.idle = assumes.idleAirflow().value();
        this.cruise = assumes.cruiseAirflow().value();
        this.peak = assumes.peakAirflow().map(Input::value);
    }

    /** What goes by the airflow: the sensors that differ, as far as they can be compared. */
    private static List<TransferCurves> tables(Build build, Assumptions assumes) {
        return assumes.isSpeedDensity() || assumes.isCompressionIgnition()
                ? List.of()
                : build.differing().stream()
                        .filter(seat -> seat.category() == Category.AIRFLOW_SENSOR)
                        .flatMap(seat -> TransferCurves.of(seat).stream())
                        .toList();
    }

    /** Null where nothing is known at load. */
    @Nullable MixtureLine line() {
        double begins =
                tables.stream().mapToDouble(TransferCurves::lowestFlow).max().orElse(Double.NEGATIVE_INFINITY);
        double ends =
                tables.stream().mapToDouble(TransferCurves::highestFlow).min().orElse(Double.POSITIVE_INFINITY);
        double leastLoad = peak.map(flow -> Math.min(flow, cruise)).orElse(cruise);
        double mostLoad =
                peak.map(flow -> Math.max(flow, cruise)).orElse(tables.isEmpty() || ends < cruise ? cruise : ends);
        double from = Math.min(idle, leastLoad);
        double to = Math.max(idle, mostLoad);
        boolean pulses = pulsesMatterAtIdle();
        List<Point> points = points(
                Math.max(pulses ? leastLoad : from, begins * (1 + INWARDS)),
                Math.min(pulses ? mostLoad : to, ends * (1 - INWARDS)));
        double authority = prediction.trimAuthorityPercent() / 100;
        return points.isEmpty()
                ? null
                : new MixtureLine(
                        points,
                        spots(),
                        from,
                        to,
                        begins > from ? begins : null,
                        ends <= to ? ends : null,
                        pulses,
                        1 - authority,
                        1 + authority);
    }

    /** A ratio at idle that is not the one at load, or is not known. */
    private boolean pulsesMatterAtIdle() {
        Double atLoad = prediction.ratios().fuelDelivery();
        return atLoad != null && !atLoad.equals(prediction.ratios().fuelDeliveryAtIdle());
    }

    /** Evenly by ratio, and the named flows themselves. */
    private List<Point> points(double first, double last) {
        TreeSet<Double> flows = new TreeSet<>(List.of(idle, cruise));
        peak.ifPresent(flows::add);
        for (int i = 0; i <= STEPS && first > 0; i++) {
            flows.add(i == STEPS ? last : first * Math.pow(last / first, (double) i / STEPS));
        }
        List<Point> points = new ArrayList<>();
        for (double flow : flows) {
            Mixture mixture = flow < first || flow > last ? null : at(flow);
            if (mixture != null) {
                points.add(new Point(flow, mixture));
            }
        }
        return points;
    }

    private List<Spot> spots() {
        List<Spot> spots = new ArrayList<>();
        spots.add(new Spot(Named.IDLE, idle, isKnown(idle) ? prediction.mixtureAtIdle() : null));
        spots.add(new Spot(Named.CRUISE, cruise, at(cruise)));
        peak.ifPresent(flow -> spots.add(new Spot(Named.PEAK, flow, at(flow))));
        return spots;
    }

    private @Nullable Mixture at(double flow) {
        return isKnown(flow) ? Predictions.mixtureAt(build, flow) : null;
    }

    private boolean isKnown(double flow) {
        return tables.stream().allMatch(table -> table.hasRatioAt(flow));
    }
}
