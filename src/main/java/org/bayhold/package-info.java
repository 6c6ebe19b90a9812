/** The application's root: only the class that starts it. Each first-level package below is a module. */
@NullMarked
package org.bayhold;

import org.jspecify.annotations.NullMarked;
