package org.bayhold.drivelog;

import java.nio.charset.StandardCharsets;
import java.util.List;

/** Files of made drives, as a technician would send them. Another seed is another drive. */
public final class SentLog {
    private SentLog() {}

    /** An engine that its calibration fits, driven long enough to pass. */
    public static byte[] sound(long seed) {
        return csv(drive(seed).rows());
    }

    /** An engine that takes in an eighth more air than its calibration believes. */
    public static byte[] ofALargerIntake(long seed) {
        return csv(drive(seed).withScale(12.5).rows());
    }

    /** A sound engine that never saw full load. */
    public static byte[] withoutFullLoad(long seed) {
        return csv(drive(seed).withoutPulls().rows());
    }

    /** The same with headings that nobody knows. */
    public static byte[] withStrangeHeadings(long seed) {
        String text = new String(sound(seed), StandardCharsets.UTF_8);
        int end = text.indexOf('\n');
        String header = text.substring(0, end);
        String first = header.substring(0, header.indexOf(','));
        StringBuilder strange = new StringBuilder(first);
        for (int i = 1; i < header.split(",", -1).length; i++) {
            strange.append(",probe ").append(i);
        }
        return (strange + text.substring(end)).getBytes(StandardCharsets.UTF_8);
    }

    /** What the strange headings hold, by name. */
    public static List<String> headings(long seed) {
        String text = new String(sound(seed), StandardCharsets.UTF_8);
        return List.of(text.substring(0, text.indexOf('\n')).split(",", -1));
    }

    /** So calm that its mixture stays within the limits at full load as well, whatever the seed. */
    private static MadeDrive drive(long seed) {
        return new MadeDrive(seed).withBoost(100).withNoise(0.4).every(0.2);
    }

    private static byte[] csv(List<MadeRow> rows) {
        return LogText.PLAIN.write(rows).getBytes(StandardCharsets.UTF_8);
    }
}
