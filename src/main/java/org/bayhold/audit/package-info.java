/** What happened, for those who have to answer for it: handovers held against the record, and the record itself verified. */
@ApplicationModule(
        allowedDependencies = {
            "buildsheet",
            "calibration",
            "catalog",
            "gate",
            "identity",
            "journal",
            "page",
            "refusal",
            "vehicle"
        })
@NullMarked
package org.bayhold.audit;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
