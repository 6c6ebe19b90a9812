/** The contract of {@code org.bayhold.acceptance} on H2. */
@NullMarked
package org.bayhold.acceptance.h2;

import org.jspecify.annotations.NullMarked;
