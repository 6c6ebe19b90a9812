/** The shell around the modules: errors, limits and common formats of HTTP. */
@ApplicationModule(allowedDependencies = {"identity", "journal", "refusal"})
@NullMarked
package org.bayhold.web;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
