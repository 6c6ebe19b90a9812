/** The append-only, hash-chained record of every accepted write: chain heads, the write template, personal data kept apart. */
@NullMarked
package org.bayhold.journal;

import org.jspecify.annotations.NullMarked;
