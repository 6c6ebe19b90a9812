/** What people type into a page: read field by field, and given back with what is wrong with it. */
@NullMarked
package org.bayhold.form;

import org.jspecify.annotations.NullMarked;
