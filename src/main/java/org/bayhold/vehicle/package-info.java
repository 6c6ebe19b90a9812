/** Customers' cars, their VINs and owners. */
@ApplicationModule(allowedDependencies = {"identity", "journal", "obd", "page", "refusal"})
@NullMarked
package org.bayhold.vehicle;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
