package org.bayhold.prediction;

import java.util.ArrayList;
import java.util.List;
import org.bayhold.catalog.Category;
import org.bayhold.prediction.Prediction.Alone;
import org.bayhold.prediction.Prediction.Boost;
import org.bayhold.prediction.Prediction.Mixture;
import org.jspecify.annotations.Nullable;

/** How bad it is. {@code docs/prediction.md, P17}: the worst of the car and of each part alone. */
final class Grading {
    private static final double EXTREME_LAMBDA = 1.10;
    private static final double HIGH_LAMBDA_WITH_BAND = 1.15;
    private static final double HALF_OF_AUTHORITY_PERCENT = 50;
    private static final double ALL_AUTHORITY_PERCENT = 100;
    private static final double EXTREME_BOOST_PERCENT = 10;
    private static final double HIGH_DUTY_PERCENT = 85;
    private static final double EXTREME_DUTY_PERCENT = 100;

    private Grading() {}

    static Risk of(
            List<Seat> differing,
            List<NotComputable> notComputable,
            List<Mixture> mixtures,
            @Nullable Boost boost,
            @Nullable Double dutyPercent) {
        List<Risk> risks = new ArrayList<>();
        differing.forEach(seat -> risks.add(of(seat, notComputable)));
        mixtures.forEach(mixture -> risks.add(of(mixture)));
        if (boost != null && boost.excessPercent() != null && boost.excessPercent() > EXTREME_BOOST_PERCENT) {
            risks.add(Risk.EXTREME);
        }
        if (dutyPercent != null) {
            risks.add(ofDuty(dutyPercent));
        }
        return risks.stream().reduce(Risk.LOW, Risk::or);
    }

    /** Every mixture of the car, and of each part as if it were alone. */
    static List<Mixture> mixtures(@Nullable Mixture atLoad, @Nullable Mixture atIdle, List<Alone> alone) {
        List<Mixture> mixtures = new ArrayList<>();
        if (atLoad != null) {
            mixtures.add(atLoad);
        }
        if (atIdle != null) {
            mixtures.add(atIdle);
        }
        for (Alone part : alone) {
            mixtures.add(part.mixture());
            if (part.mixtureAtIdle() != null) {
                mixtures.add(part.mixtureAtIdle());
            }
        }
        return mixtures;
    }

    static Risk of(Mixture mixture) {
        if (mixture.lambda() >= EXTREME_LAMBDA || mixture.authorityUsedPercent() > ALL_AUTHORITY_PERCENT) {
            return Risk.EXTREME;
        }
        boolean isLeanInItsBand = mixture.lambdaHigh() != null && mixture.lambdaHigh() >= HIGH_LAMBDA_WITH_BAND;
        return isLeanInItsBand || mixture.authorityUsedPercent() > HALF_OF_AUTHORITY_PERCENT ? Risk.HIGH : Risk.LOW;
    }

    static Risk ofDuty(double percent) {
        return percent > EXTREME_DUTY_PERCENT ? Risk.EXTREME : percent > HIGH_DUTY_PERCENT ? Risk.HIGH : Risk.LOW;
    }

    private static Risk of(Seat seat, List<NotComputable> notComputable) {
        Category category = seat.category();
        if (seat.fitted().isUnknown() && (category == Category.ECU || category == Category.FUEL)) {
            return Risk.EXTREME;
        }
        boolean uncertain =
                notComputable.stream().anyMatch(entry -> entry.place().equals(seat.place()));
        return switch (seat.group()) {
            case AIR_METERING, FUEL_METERING, BOOST, COMBUSTION, UNSORTED -> uncertain ? Risk.HIGH : Risk.MODERATE;
            case EXHAUST, CONTROL -> Risk.MODERATE;
            case DRIVELINE, NO_EFFECT -> Risk.LOW;
        };
    }
}
