/** What an ECU tells of itself: the identity of its software, and the decoding of SAE J1979 service 09 over ISO 15765-2. */
@ApplicationModule(allowedDependencies = {})
@NullMarked
package org.bayhold.obd;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
