/** What happened, for those who have to answer for it: the record verified and handed out whole. */
@ApplicationModule(allowedDependencies = {"identity", "journal"})
@NullMarked
package org.bayhold.audit;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
