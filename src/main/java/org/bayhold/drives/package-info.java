/** Logged drives of a car: the file that is kept, how its columns are read, the judgement that is put on record, and its pictures. */
@ApplicationModule(
        allowedDependencies = {
            "buildsheet",
            "calibration",
            "catalog",
            "drivelog",
            "identity",
            "journal",
            "page",
            "prediction",
            "refusal",
            "vehicle"
        })
@NullMarked
package org.bayhold.drives;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
