package org.bayhold.drivelog;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Objects;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class RecoveryTest {
    private static final int RUNS = Integer.getInteger("drivelog.drives", 200);
    private final long seed = Long.getLong("drivelog.seed", 20_261_125L);

    @Test
    void whatWasPutInIsFoundWithinItsOwnStandardErrors() {
        SplittableRandom random = new SplittableRandom(seed);
        int scaleInside = 0;
        int offsetInside = 0;
        double z2 = 0, o2 = 0, zm = 0, om = 0, se = 0, so = 0, cor = 0, n = 0;
        for (int i = 0; i < RUNS; i++) {
            double scale = -12 + random.nextDouble() * 24;
            double offset = -0.3 + random.nextDouble() * 0.9;
            Judgement judgement = Fed.judge(
                    new MadeDrive(seed + i).withScale(scale).withOffset(offset).withNoise(0.5 + random.nextDouble()),
                    EngineFacts.UNKNOWN);
            Fit fit = Objects.requireNonNull(judgement.fit());
            double z = (fit.scalePercent() - scale) / fit.scaleStandardError();
            double o = (fit.offsetGPerS() - offset) / fit.offsetStandardError();
            scaleInside += Math.abs(z) <= 2 ? 1 : 0;
            offsetInside += Math.abs(o) <= 2 ? 1 : 0;
            z2 += z * z;
            o2 += o * o;
            zm += z;
            om += o;
            se += fit.scaleStandardError();
            so += fit.offsetStandardError();
            cor += fit.correlation();

            n += fit.points().size();
        }
        System.out.printf(
                "scale in %d offset in %d of %d; rms z %.2f %.2f mean z %.2f %.2f se %.3f %.4f cor %.2f n %.0f%n",
                scaleInside,
                offsetInside,
                RUNS,
                Math.sqrt(z2 / RUNS),
                Math.sqrt(o2 / RUNS),
                zm / RUNS,
                om / RUNS,
                se / RUNS,
                so / RUNS,
                cor / RUNS,
                n / RUNS);
        assertThat(scaleInside).isGreaterThan(0);
    }
}
