package org.bayhold.journal;

/**
 * The answer of a write.
 *
 * @param replayed the same request was answered before, and this is that answer
 */
public record Written<T>(T value, boolean replayed) {}
