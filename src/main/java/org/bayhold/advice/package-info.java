/** The answer to "may I run this part with my calibration?", with its numbers, its letter, and the work it may become. */
@ApplicationModule(
        allowedDependencies = {
            "buildsheet",
            "calibration",
            "catalog",
            "gate",
            "identity",
            "journal",
            "obd",
            "page",
            "prediction",
            "refusal",
            "vehicle"
        })
@NullMarked
package org.bayhold.advice;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
