package org.bayhold.calibration;

import java.util.UUID;
import org.springframework.data.jpa.repository.JpaRepository;

interface Withdrawals extends JpaRepository<WithdrawalRow, UUID> {}
