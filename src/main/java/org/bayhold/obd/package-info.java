/** What an ECU tells of itself: the identity of its software, its trouble codes and monitors; SAE J1979 over ISO 15765-2 decoded. */
@ApplicationModule(allowedDependencies = {})
@NullMarked
package org.bayhold.obd;

import org.jspecify.annotations.NullMarked;
import org.springframework.modulith.ApplicationModule;
