/** The shell around the modules: errors, limits and common formats of HTTP. */
@NullMarked
package org.bayhold.web;

import org.jspecify.annotations.NullMarked;
