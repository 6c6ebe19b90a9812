/** What the tests stand on: servers, a running Bayhold, and a shop that speaks to it over HTTP. */
@NullMarked
package org.bayhold.support;

import org.jspecify.annotations.NullMarked;
