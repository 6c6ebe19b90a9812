package org.bayhold.calibration;

import java.util.List;
import org.bayhold.identity.Caller;

/** Which cars run a revision: the floor that knows the cars provides it. */
public interface CarsRunning {
    /** The cars that run the revision now, as the caller may see them. */
    List<?> of(Revision revision, Caller caller);
}
