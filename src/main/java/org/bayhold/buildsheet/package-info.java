/** What happened to each car as dated facts, and the fold that gives its state for any two times. */
@ApplicationModule(
        allowedDependencies = {
            "calibration",
            "catalog",
            "drivelog",
            "identity",
            "journal",
            "obd",
            "page",
            "prediction",
            "refusal",
            "vehicle"
        })
@NullMarked
package org.bayhold.buildsheet;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
