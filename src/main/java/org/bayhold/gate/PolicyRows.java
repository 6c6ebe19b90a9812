package org.bayhold.gate;

import java.util.UUID;
import org.springframework.data.jpa.repository.JpaRepository;

interface PolicyRows extends JpaRepository<PolicyRow, UUID> {}
