/** Benchmarks that anyone can run: {@code docs/benchmarks.md}. */
@NullMarked
package org.bayhold.bench;

import org.jspecify.annotations.NullMarked;
