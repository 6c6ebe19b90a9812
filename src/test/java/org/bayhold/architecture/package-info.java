/** What the build holds the code to, beyond what a compiler can; each rule is seen to fail on a fixture made to break it. */
@NullMarked
package org.bayhold.architecture;

import org.jspecify.annotations.NullMarked;
