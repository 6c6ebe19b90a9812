package org.bayhold.drivelog;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Objects;
import java.util.SplittableRandom;
import org.bayhold.support.Seed;
import org.junit.jupiter.api.Test;

/**
 * What is put into a made engine comes out of its log. {@code -Ddrivelog.drives=} for more drives, {@code -Dbayhold.test.seed=}
 * for others. docs/drive-log.md, D10.
 */
class RecoveryTest {
    private static final int DRIVES = Integer.getInteger("drivelog.drives", 1_000);
    private final long seed = Seed.OF_THIS_RUN;

    /** So many of the true values lie within two standard errors, and those are no larger than they must be. */
    @Test
    void twoStandardErrorsHoldNinetyFivePercent() {
        SplittableRandom random = new SplittableRandom(seed);
        int scaleHeld = 0;
        int offsetHeld = 0;
        double scaleSquares = 0;
        double offsetSquares = 0;
        double scaleBias = 0;
        double offsetBias = 0;
        for (int i = 0; i < DRIVES; i++) {
            double scale = -12 + random.nextDouble() * 24;
            double offset = -0.3 + random.nextDouble() * 0.9;
            double noise = 0.5 + random.nextDouble();
            Judgement judgement = Fed.judge(
                    new MadeDrive(seed + i).withScale(scale).withOffset(offset).withNoise(noise));
            Fit fit = Objects.requireNonNull(judgement.fit());
            double scaleOff = (fit.scalePercent() - scale) / fit.scaleStandardError();
            double offsetOff = (fit.offsetGPerS() - offset) / fit.offsetStandardError();
            scaleHeld += Math.abs(scaleOff) <= 2 ? 1 : 0;
            offsetHeld += Math.abs(offsetOff) <= 2 ? 1 : 0;
            scaleSquares += scaleOff * scaleOff / DRIVES;
            offsetSquares += offsetOff * offsetOff / DRIVES;
            scaleBias += scaleOff / DRIVES;
            offsetBias += offsetOff / DRIVES;
            assertThat(fit.scaleStandardError()).isLessThan(1);
            assertThat(fit.offsetStandardError()).isLessThan(0.1);
        }
        String found = String.format(
                "%s: of %d drives scale held in %d, offset in %d; spread %.2f and %.2f standard errors",
                Seed.repeats(seed), DRIVES, scaleHeld, offsetHeld, Math.sqrt(scaleSquares), Math.sqrt(offsetSquares));

        assertThat(scaleHeld).as(found).isBetween((int) (0.945 * DRIVES), (int) (0.985 * DRIVES));
        assertThat(offsetHeld).as(found).isBetween((int) (0.945 * DRIVES), (int) (0.985 * DRIVES));
        assertThat(Math.sqrt(scaleSquares)).as(found).isBetween(0.8, 1.05);
        assertThat(Math.sqrt(offsetSquares)).as(found).isBetween(0.8, 1.05);
        assertThat(Math.abs(scaleBias)).as(found).isLessThan(0.15);
        assertThat(Math.abs(offsetBias)).as(found).isLessThan(0.15);
    }

    /** Nothing of what is known grows with the length of a drive, and the fit only becomes surer. */
    @Test
    void aLongDriveIsGatheredIntoFewPoints() {
        Fit shorter = Objects.requireNonNull(
                Fed.judge(new MadeDrive(1).withScale(6).times(2)).fit());
        Fit longer = Objects.requireNonNull(
                Fed.judge(new MadeDrive(1).withScale(6).times(150)).fit());

        assertThat(longer.points()).hasSizeLessThan(1_400);
        assertThat(longer.scaleStandardError()).isLessThan(shorter.scaleStandardError() / 4);
        assertThat(longer.scalePercent()).isBetween(5.8, 6.2);
        double seconds =
                longer.points().stream().mapToDouble(Fit.Point::seconds).sum();
        assertThat(seconds).isGreaterThan(150 * 250);
    }
}
