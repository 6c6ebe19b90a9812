package org.bayhold.advice;

import java.util.UUID;
import org.springframework.data.jpa.repository.JpaRepository;

interface DroppedPlans extends JpaRepository<DroppedPlanRow, UUID> {}
