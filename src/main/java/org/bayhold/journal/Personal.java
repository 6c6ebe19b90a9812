package org.bayhold.journal;

import java.util.UUID;

/**
 * A reference to personal data that is kept apart, so that it can be erased while the record stands.
 *
 * @param id the row that holds the text while it is not erased
 * @param sha256 salted commitment to the text, lower-case hex
 */
public record Personal(UUID id, String sha256) {}
