/** The append-only, hash-chained record of every accepted write: chain heads, the write template, personal data kept apart. */
@ApplicationModule(allowedDependencies = "refusal")
@NullMarked
package org.bayhold.journal;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
