/** The catalogue's own rules, without a server. */
@NullMarked
package org.bayhold.catalog;

import org.jspecify.annotations.NullMarked;
