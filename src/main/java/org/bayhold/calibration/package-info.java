/** Calibration revisions, the parts they were written for, and their withdrawal. */
@NullMarked
package org.bayhold.calibration;

import org.jspecify.annotations.NullMarked;
