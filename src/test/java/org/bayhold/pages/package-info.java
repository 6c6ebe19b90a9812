/** The pages: their templates read as text, and each role's main job in a real browser. */
@NullMarked
package org.bayhold.pages;

import org.jspecify.annotations.NullMarked;
