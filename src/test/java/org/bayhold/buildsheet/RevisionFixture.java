package org.bayhold.buildsheet;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.bayhold.calibration.CalibrationMap;
import org.bayhold.calibration.CoverageLine;
import org.bayhold.calibration.Purpose;
import org.bayhold.calibration.Revision;
import org.bayhold.catalog.Category;
import org.bayhold.catalog.Place;
import org.bayhold.obd.Reading;
import org.jspecify.annotations.Nullable;

/** A revision as a calibrator issues it: in force since before any car came, for the ECU of {@link CarFixture#aCar()}. */
public final class RevisionFixture {
    private final String name;
    private final List<CoverageLine> coverage = new ArrayList<>();
    private final List<CalibrationMap> maps = new ArrayList<>();
    private boolean compressionIgnition;
    private String ecuHardware = CarFixture.ECU_HARDWARE;
    private Reading reading;
    private Purpose purpose = Purpose.NORMAL;
    private Instant issuedAt = CarFixture.OPENING;
    private @Nullable Instant withdrawnAt;

    private RevisionFixture(String name) {
        this.name = name;
        this.reading = new Reading("CAL-" + name, "CVN-" + name, null);
    }

    /** The same name is the same revision. */
    public static RevisionFixture aRevision(String name) {
        return new RevisionFixture(name);
    }

    /** Covers the factory part everywhere and nothing else. */
    public static Revision stock(String name) {
        return aRevision(name).made();
    }

    public RevisionFixture covering(Category category, UUID... parts) {
        return covering(Place.of(category), parts);
    }

    public RevisionFixture covering(Place place, UUID... parts) {
        return with(new CoverageLine(place, List.of(parts), false, false));
    }

    public RevisionFixture coveringOrFactory(Category category, UUID... parts) {
        return with(new CoverageLine(Place.of(category), List.of(parts), true, false));
    }

    public RevisionFixture coveringOrNone(Category category, UUID... parts) {
        return with(new CoverageLine(Place.of(category), List.of(parts), false, true));
    }

    private RevisionFixture with(CoverageLine line) {
        coverage.add(line);
        return this;
    }

    /** With a map that is for these fuels; none means every fuel that it covers. */
    public RevisionFixture withMap(String map, UUID... fuels) {
        maps.add(new CalibrationMap(map, List.of(fuels), false));
        return this;
    }

    public RevisionFixture forCompressionIgnition() {
        compressionIgnition = true;
        return this;
    }

    public RevisionFixture forEcu(String hardware) {
        ecuHardware = hardware;
        return this;
    }

    public RevisionFixture reporting(Reading shown) {
        reading = shown;
        return this;
    }

    public RevisionFixture forA(Purpose use) {
        purpose = use;
        return this;
    }

    public RevisionFixture issuedAt(String time) {
        issuedAt = Instant.parse(time);
        return this;
    }

    public RevisionFixture withdrawnAt(String time) {
        withdrawnAt = Instant.parse(time);
        return this;
    }

    public Revision made() {
        UUID id = UUID.nameUUIDFromBytes(name.getBytes(StandardCharsets.UTF_8));
        return new Revision(
                id,
                "Calibration",
                name,
                ecuHardware,
                reading,
                purpose,
                coverage,
                maps,
                compressionIgnition,
                issuedAt,
                withdrawnAt);
    }
}
