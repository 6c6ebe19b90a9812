/** The contract of {@code org.bayhold.acceptance} on PostgreSQL. */
@NullMarked
package org.bayhold.acceptance.postgres;

import org.jspecify.annotations.NullMarked;
