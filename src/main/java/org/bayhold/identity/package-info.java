/** Users, roles and tokens, and the one table of who may do what. */
@ApplicationModule(allowedDependencies = {"journal", "page", "refusal"})
@NullMarked
package org.bayhold.identity;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
