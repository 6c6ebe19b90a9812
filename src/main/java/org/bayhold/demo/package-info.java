/** The demo profile: its users, and an invented shop to walk through. Nothing here runs outside the profile. */
@ApplicationModule(allowedDependencies = "identity")
@NullMarked
package org.bayhold.demo;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
