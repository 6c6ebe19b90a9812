package org.bayhold.catalog;

import java.time.Instant;
import java.util.Locale;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * What the shop has learnt of a part on some cars: that it brings nothing there, or harms.
 *
 * @param effect what it does; NO_OBJECTION takes back what an earlier note said of the same cars
 * @param engine as cars have it on record; null for every engine
 * @param ecuHardware null for every ECU
 * @param note what was seen, in a sentence
 */
public record BenefitNote(
        UUID id,
        UUID partSpecId,
        Effect effect,
        @Nullable String engine,
        @Nullable String ecuHardware,
        String note,
        Instant recordedAt) {
    /** What a part does on the cars that a note is about. */
    public enum Effect {
        BRINGS_NOTHING,
        HARMS,
        NO_OBJECTION
    }

    /** Whether it speaks of such a car. */
    public boolean isAbout(@Nullable String engineOfCar, String ecuHardwareOfCar) {
        return (engine == null || (engineOfCar != null && plain(engine).equals(plain(engineOfCar))))
                && (ecuHardware == null || plain(ecuHardware).equals(plain(ecuHardwareOfCar)));
    }

    /** The cars that it is about; of several notes on the same cars the last counts. */
    String cars() {
        return (engine == null ? "" : plain(engine)) + "\n" + (ecuHardware == null ? "" : plain(ecuHardware));
    }

    private static String plain(String name) {
        return name.replaceAll("\\s+", "").toLowerCase(Locale.ROOT);
    }
}
