/** What happened to each car as dated facts, and the fold that gives its state for any two times. */
@NullMarked
package org.bayhold.buildsheet;

import org.jspecify.annotations.NullMarked;
