/** What a recorded drive says of a calibration: read as a stream and judged, pure, {@code docs/drive-log.md}. */
@ApplicationModule(allowedDependencies = {"prediction"})
@NullMarked
package org.bayhold.drivelog;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
