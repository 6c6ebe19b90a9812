package org.bayhold.drivelog;

/** Who is given each moment of a drive in its turn. */
interface Samples {
    void take(Sample sample);
}
