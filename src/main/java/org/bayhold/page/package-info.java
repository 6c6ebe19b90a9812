/** What the pages of every module share: typed forms that keep what was typed, and the site's time. */
@ApplicationModule(allowedDependencies = {"journal", "refusal"})
@NullMarked
package org.bayhold.page;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
