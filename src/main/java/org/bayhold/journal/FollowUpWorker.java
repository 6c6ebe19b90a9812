package org.bayhold.journal;

import java.util.UUID;

/** Does the work that a write left to be done car by car. The floor that knows the work provides it. */
public interface FollowUpWorker {
    /** Works off what is open for one revision, correction or move; each car in a transaction of its own. */
    void workOff(UUID subjectId);
}
