package org.bayhold.journal;

import java.util.UUID;
import org.springframework.data.jpa.repository.JpaRepository;

interface PersonalRows extends JpaRepository<PersonalRow, UUID> {}
