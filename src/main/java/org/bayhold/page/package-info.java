/** What the pages of every module share: typed forms that keep what was typed, and the site's time. */
@NullMarked
package org.bayhold.page;

import org.jspecify.annotations.NullMarked;
