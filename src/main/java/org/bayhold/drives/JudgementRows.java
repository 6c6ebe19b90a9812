package org.bayhold.drives;

import java.util.UUID;
import org.springframework.data.jpa.repository.JpaRepository;

interface JudgementRows extends JpaRepository<JudgementRow, UUID> {}
