package org.bayhold.drivelog;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/** Made drives of any engine, as logs in which any channel may be missing, judged: for whatever shows what was judged. */
public final class AnyDrive {
    public static final double BOOST_TARGET_KPA = 180;
    public static final EngineFacts ENGINE =
            EngineFacts.UNKNOWN.withDisplacementCc(MadeDrive.displacementCc()).withBoostTargetKpa(BOOST_TARGET_KPA);

    /** Without them there is no drive to speak of. */
    private static final List<Parameter> ALWAYS = List.of(Parameter.TIME, Parameter.ENGINE_SPEED);

    private AnyDrive() {}

    /** The same for the same seed. */
    public static Judgement judged(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        MadeDrive made = new MadeDrive(seed)
                .withScale(random.nextDouble(-20, 20))
                .withOffset(random.nextDouble(-0.3, 0.6))
                .withBankDifference(random.nextDouble(0, 10))
                .withNoise(random.nextDouble(0.5, 2))
                .withFullLoadError(random.nextDouble(-12, 12))
                .withKnock(random.nextDouble(-8, 8))
                .withBoost(random.nextDouble(120, 210))
                .every(random.nextInt(1, 11) / 10.0);
        if (random.nextInt(5) == 0) {
            made.withoutPulls();
        }
        List<Parameter> out = new ArrayList<>();
        for (Parameter parameter : LogColumn.PARAMETERS) {
            if (!ALWAYS.contains(parameter) && random.nextInt(8) == 0) {
                out.add(parameter);
            }
        }
        return judged(Logs.without(made.rows(), out.toArray(Parameter[]::new)));
    }

    /** With all channels: a scale error and knock, and air that is not metered. */
    public static Judgement complete(long seed, int repeats) {
        return judged(Logs.of(new MadeDrive(seed)
                .withScale(7)
                .withOffset(0.2)
                .withKnock(5)
                .times(repeats)
                .rows()));
    }

    private static Judgement judged(String text) {
        return Logs.judge(text, ENGINE);
    }
}
