package org.bayhold.drivelog;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.SplittableRandom;
import org.bayhold.support.Seed;
import org.junit.jupiter.api.Test;

/**
 * A sound engine never fails, whatever its noise and its rate of rows. Which engines are sound is not for the check to say:
 * the simulation knows how far each truly burned from its command. {@code -Ddrivelog.drives=} for more of them.
 * docs/drive-log.md, D14.
 */
class SoundEngineTest {
    private static final int DRIVES = Integer.getInteger("drivelog.drives", 600);
    /** The shop allows 3 %; the rest is for the sensor. */
    private static final double SOUND_PERCENT = 2.2;

    private final long seed = Seed.OF_THIS_RUN;

    @Test
    void neverFails() {
        SplittableRandom random = new SplittableRandom(seed);
        int sound = 0;
        int passed = 0;
        for (int i = 0; i < DRIVES; i++) {
            double rate = new double[] {0.05, 0.1, 0.2, 0.25, 0.5, 1}[random.nextInt(6)];
            MadeDrive made = new MadeDrive(seed + i)
                    .withScale(-2 + random.nextDouble() * 4)
                    .withOffset(-0.05 + random.nextDouble() * 0.1)
                    .withBankDifference(-1 + random.nextDouble() * 2)
                    .withFullLoadError(-0.8 + random.nextDouble() * 1.6)
                    .withKnock(random.nextDouble() * 2.5)
                    .withNoise(0.3 + random.nextDouble() * 1.5)
                    .every(rate);
            EngineFacts facts = EngineFacts.UNKNOWN
                    .withAdaptationsReset(true)
                    .withBoostTargetKpa(180)
                    .withAirflowCeilingGPerS(300);

            Judgement judgement = Fed.judge(made, facts);

            if (made.worstFullLoadPercent() <= SOUND_PERCENT) {
                sound++;
                assertThat(judgement.verdict())
                        .as("%s, drive %d, a row every %.2f s: %s", Seed.repeats(seed), i, rate, judgement.findings())
                        .isNotEqualTo(Verdict.FAIL);
                passed += judgement.verdict() == Verdict.PASS ? 1 : 0;
            }
        }
        assertThat(sound).as("the engines are not all thrown away").isGreaterThan(DRIVES / 3);
        assertThat(passed).isGreaterThan(sound * 9 / 10);
    }
}
