package org.bayhold.drivelog;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.bayhold.prediction.Risk;
import org.bayhold.prediction.Sentence;

/**
 * Something that the drive shows. {@code docs/drive-log.md, D13}.
 *
 * @param numbers by name, each name with its unit
 * @param rows the lines that it rests on, the weightiest first; of many some
 */
public record Finding(Code code, Risk risk, Map<String, Double> numbers, List<Rows> rows, Sentence sentence) {
    public Finding {
        numbers = Collections.unmodifiableMap(new LinkedHashMap<>(numbers));
        rows = List.copyOf(rows);
    }

    /** What may be found, and what it does to the verdict. */
    public enum Code {
        TRIM_AT_LIMIT(Effect.FAILS),
        BEYOND_NORMAL_CORRECTION(Effect.FAILS),
        SCALE_ERROR(Effect.FAILS),
        AIR_LEAK_PATTERN(Effect.FAILS),
        DELIVERY_LIMIT(Effect.FAILS),
        BANK_DIFFERENCE(Effect.FAILS),
        LEAN_AT_FULL_LOAD(Effect.FAILS),
        RICH_AT_FULL_LOAD(Effect.FAILS),
        OVERBOOST(Effect.FAILS),
        UNDERBOOST(Effect.FAILS),
        KNOCK_RETARD(Effect.FAILS),
        METER_SATURATED(Effect.FAILS),
        BAD_DATA(Effect.LIMITS),
        COLD_OR_OPEN_LOOP_ONLY(Effect.LIMITS),
        LEARNED_BEFORE_FLASH(Effect.TELLS),
        WITHIN_NORMAL_CORRECTION(Effect.TELLS);

        private final Effect effect;

        Code(Effect effect) {
            this.effect = effect;
        }

        Effect effect() {
            return effect;
        }
    }

    enum Effect {
        FAILS,
        /** Nothing passes on it. */
        LIMITS,
        TELLS
    }
}
