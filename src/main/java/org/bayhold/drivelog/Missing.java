package org.bayhold.drivelog;

import java.util.List;
import org.bayhold.prediction.Sentence;
import org.jspecify.annotations.Nullable;

/**
 * What keeps a drive from passing. {@code docs/drive-log.md, D14 and D15}.
 *
 * @param needed seconds; null where it is no time that is missing
 * @param seen seconds
 */
public record Missing(
        Code code, @Nullable Double needed, @Nullable Double seen) {
    /** What may be missing. */
    public enum Code {
        ENGINE_SPEED,
        LOAD,
        TRIMS,
        COOLANT_TEMPERATURE,
        WARM_CLOSED_LOOP,
        IDLE,
        CRUISE,
        PEDAL,
        FULL_LOAD,
        MEASURED_LAMBDA,
        COMMANDED_RATIO,
        MANIFOLD_PRESSURE,
        SOUND_DATA
    }

    static Missing of(Code code) {
        return new Missing(code, null, null);
    }

    public Sentence sentence() {
        return new Sentence(
                "drivelog.missing." + code.name(),
                List.of(needed == null ? 0 : Math.round(needed), seen == null ? 0 : Math.round(seen)));
    }
}
