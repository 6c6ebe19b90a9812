package org.bayhold.calibration;

import java.util.List;
import org.bayhold.identity.Caller;

/** What the floors above do once a withdrawal is on record: from then on every gate that rests on it fails. */
public interface AfterWithdrawal {
    /** @return the cars that run the revision, as the caller may see them */
    List<?> withdrawn(Revision revision, Caller caller);
}
