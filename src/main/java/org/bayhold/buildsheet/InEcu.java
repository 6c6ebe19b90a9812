package org.bayhold.buildsheet;

import java.time.Instant;
import java.util.UUID;
import org.bayhold.calibration.Revision;
import org.bayhold.obd.Reading;
import org.jspecify.annotations.Nullable;

/** What is known of the software in a car's ECU. The set is closed. */
public sealed interface InEcu {
    /** The answer of {@code cases} for what this is. */
    <T> T match(Cases<T> cases);

    /** One answer for each thing that can be in an ECU. */
    interface Cases<T> {
        T factory(Factory in);

        T unknown(Unknown in);

        T flashed(Flashed in);

        T found(Found in);

        T notOurs(NotOurs in);

        T failed(Failed in);
    }

    /** Never flashed since it left its maker. {@code reading} is NOTHING where neither registration nor a first ECU check told it. */
    record Factory(Reading reading) implements InEcu {
        @Override
        public <T> T match(Cases<T> cases) {
            return cases.factory(this);
        }
    }

    /** Unknown baseline never flashed, or another ECU was fitted and nothing flashed since. */
    record Unknown() implements InEcu {
        @Override
        public <T> T match(Cases<T> cases) {
            return cases.unknown(this);
        }
    }

    /** A completed flash of one of the shop's revisions; the last flash. */
    record Flashed(Revision revision, Instant at, UUID recordId, UUID flashedBy) implements InEcu {
        @Override
        public <T> T match(Cases<T> cases) {
            return cases.flashed(this);
        }
    }

    /** A revision found by read-back on a car with an unknown baseline (rule 10), dated by that read-back. */
    record Found(Revision revision, Instant at, UUID recordId) implements InEcu {
        @Override
        public <T> T match(Cases<T> cases) {
            return cases.found(this);
        }
    }

    /** A completed flash of a file that is not the shop's; the last flash. */
    record NotOurs(Instant at, UUID recordId) implements InEcu {
        @Override
        public <T> T match(Cases<T> cases) {
            return cases.notOurs(this);
        }
    }

    /**
     * The last flash failed.
     *
     * @param attempted the revision that was being written; null where the file is not the shop's
     */
    record Failed(@Nullable Revision attempted, Instant at, UUID recordId) implements InEcu {
        @Override
        public <T> T match(Cases<T> cases) {
            return cases.failed(this);
        }
    }
}
