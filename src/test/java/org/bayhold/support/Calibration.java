package org.bayhold.support;

/** An issued calibration revision; {@code calid}, {@code cvn} or {@code fileSha256} is empty where the revision has none. */
public record Calibration(String id, String name, String calid, String cvn, String fileSha256) {
    /** What an ECU that runs it answers to a read-back. */
    public Body reading() {
        return calid.isEmpty()
                ? Body.of("fileSha256", fileSha256)
                : Body.of("calid", calid).with("cvn", cvn);
    }
}
