/** What the pages of every module share: forms that keep what was typed, the site's time, the reader's units, axes of pictures. */
@ApplicationModule(allowedDependencies = {"journal", "refusal"})
@NullMarked
package org.bayhold.page;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
