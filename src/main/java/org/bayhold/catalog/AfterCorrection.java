package org.bayhold.catalog;

/** What the floors above do once a correction, or a move of a category, is on record. */
public interface AfterCorrection {
    void corrected(Correction correction);

    void moved(java.util.UUID moveId, Category category);
}
