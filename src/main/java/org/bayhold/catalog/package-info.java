/** Categories with their effect groups, and the shop's part specs. */
@ApplicationModule(allowedDependencies = {"identity", "journal", "page", "refusal"})
@NullMarked
package org.bayhold.catalog;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
