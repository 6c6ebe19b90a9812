/** Users, roles and tokens, and the one table of who may do what. */
@NullMarked
package org.bayhold.identity;

import org.jspecify.annotations.NullMarked;
