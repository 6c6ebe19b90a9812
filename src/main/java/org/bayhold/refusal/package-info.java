/** How a request is refused: a closed set of codes, with the fields and the reasons. */
@ApplicationModule(allowedDependencies = {})
@NullMarked
package org.bayhold.refusal;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
