/** Categories with their effect groups, and the shop's part specs. */
@NullMarked
package org.bayhold.catalog;

import org.jspecify.annotations.NullMarked;
