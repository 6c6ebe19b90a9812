/** Customers' cars, their VINs and owners. */
@NullMarked
package org.bayhold.vehicle;

import org.jspecify.annotations.NullMarked;
