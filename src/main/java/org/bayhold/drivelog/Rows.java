package org.bayhold.drivelog;

/** Lines of the file, both ends among them. */
public record Rows(long first, long last) {}
