package org.bayhold.drivelog;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/**
 * A sound engine never fails, whatever its noise, its rate of rows and its small errors. {@code -Ddrivelog.drives=} for more
 * of them. docs/drive-log.md, D14.
 */
class SoundEngineTest {
    private static final int DRIVES = Integer.getInteger("drivelog.drives", 400);
    private final long seed = Long.getLong("drivelog.seed", 20_261_125L);

    @Test
    void neverFails() {
        SplittableRandom random = new SplittableRandom(seed);
        int passed = 0;
        for (int i = 0; i < DRIVES; i++) {
            double scale = -1 + random.nextDouble() * 2;
            double rate = new double[] {0.05, 0.1, 0.2, 0.25, 0.5, 1}[random.nextInt(6)];
            MadeDrive made = new MadeDrive(seed + i)
                    .withScale(scale)
                    .withOffset(-0.05 + random.nextDouble() * 0.1)
                    .withBankDifference(-1 + random.nextDouble() * 2)
                    .withFullLoadError(-0.3 + random.nextDouble() * 0.6)
                    .withKnock(random.nextDouble() * 2.5)
                    .withNoise(0.3 + random.nextDouble())
                    .every(rate);
            EngineFacts facts = EngineFacts.UNKNOWN
                    .withAdaptationsReset(true)
                    .withBoostTargetKpa(180)
                    .withAirflowCeilingGPerS(300);

            Judgement judgement = Fed.judge(made, facts);

            assertThat(judgement.verdict())
                    .as("-Ddrivelog.seed=%d, drive %d, a row every %.2f s: %s", seed, i, rate, judgement.findings())
                    .isNotEqualTo(Verdict.FAIL);
            passed += judgement.verdict() == Verdict.PASS ? 1 : 0;
        }
        assertThat(passed).isGreaterThan(DRIVES * 9 / 10);
    }
}
