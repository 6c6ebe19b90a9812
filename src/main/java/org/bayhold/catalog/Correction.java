package org.bayhold.catalog;

import java.time.Instant;
import java.util.UUID;

/** A correction of a part spec: every car that carried the part before it needs a look. */
public record Correction(UUID id, UUID partSpecId, Instant recordedAt) {}
