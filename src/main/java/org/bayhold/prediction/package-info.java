/** What a mismatch between the parts on a car and its calibration does: pure arithmetic, {@code docs/prediction.md}. */
@ApplicationModule(allowedDependencies = {"catalog"})
@NullMarked
package org.bayhold.prediction;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
