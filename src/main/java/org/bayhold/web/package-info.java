/** The shell around the modules: errors, limits and common formats of HTTP. */
@ApplicationModule(
        allowedDependencies = {"calibration", "catalog", "identity", "journal", "page", "refusal", "vehicle"})
@NullMarked
package org.bayhold.web;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
