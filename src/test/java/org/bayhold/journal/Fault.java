package org.bayhold.journal;

/** What can be taken out of the writing of a fact, to see who notices. */
public enum Fault {
    NONE,
    /** Step 1: the head is read, and nobody is kept from reading the same. */
    NO_FIRST_STEP,
    /** The time is taken before the lock, and taken as it is. */
    TIME_BEFORE_THE_LOCK,
    /** What the decision rests on beside the car is read, and nobody is kept from changing it. */
    NOTHING_HELD
}
