/** Calibration revisions, the parts they were written for, and their withdrawal. */
@ApplicationModule(allowedDependencies = {"catalog", "identity", "journal", "obd", "page", "prediction", "refusal"})
@NullMarked
package org.bayhold.calibration;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
