/** The rules as callers meet them: end to end over HTTP, on every database. {@code docs/rules.md}. */
@NullMarked
package org.bayhold.acceptance;

import org.jspecify.annotations.NullMarked;
