/** The demo profile: its users, and an invented shop to walk through. Nothing here runs outside the profile. */
@NullMarked
package org.bayhold.demo;

import org.jspecify.annotations.NullMarked;
