/** The decision whether a car may leave: policy, checks, retune items, clearances and handovers. */
@NullMarked
package org.bayhold.gate;

import org.jspecify.annotations.NullMarked;
