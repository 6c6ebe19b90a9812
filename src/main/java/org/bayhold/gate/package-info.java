/** The decision whether a car may leave: policy, checks, retune items, clearances and handovers. */
@ApplicationModule(
        allowedDependencies = {
            "buildsheet",
            "calibration",
            "catalog",
            "drivelog",
            "drives",
            "identity",
            "journal",
            "obd",
            "page",
            "prediction",
            "refusal",
            "vehicle"
        })
@NullMarked
package org.bayhold.gate;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
