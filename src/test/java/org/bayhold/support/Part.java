package org.bayhold.support;

/** A part spec of the catalogue. */
public record Part(String id, String category, String maker, String partNumber) {}
