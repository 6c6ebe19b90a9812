package org.bayhold.catalog;

import java.time.Instant;

/** A manager moved a category to NO_EFFECT, or back from it. Dated by both times, so that earlier decisions replay. */
public record CategoryMove(Category category, boolean noEffect, Instant effectiveAt, Instant recordedAt) {}
