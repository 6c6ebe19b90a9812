package org.bayhold.catalog;

import java.util.UUID;
import org.springframework.data.jpa.repository.JpaRepository;

interface CategoryMoves extends JpaRepository<CategoryMoveRow, UUID> {}
