package org.bayhold.drives;

import java.util.List;
import java.util.UUID;
import org.springframework.data.jpa.repository.JpaRepository;

interface ColumnMeaningRows extends JpaRepository<ColumnMeaningRow, UUID> {
    /** Ids grow with time. */
    List<ColumnMeaningRow> findAllByOrderById();
}
