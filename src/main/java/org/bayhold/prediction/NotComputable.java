package org.bayhold.prediction;

import org.bayhold.catalog.Place;

/** A mismatch that no number, or not every number, says anything of, and why. {@code docs/prediction.md, P3}. */
public record NotComputable(Place place, Sentence why) {}
