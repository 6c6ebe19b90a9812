package org.bayhold.identity;

import java.time.Instant;
import java.util.Collection;
import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.Modifying;
import org.springframework.data.jpa.repository.Query;

interface SignInFailures extends JpaRepository<SignInFailureRow, String> {
    @Modifying
    @Query("delete from SignInFailureRow f where f.subject in ?1")
    int forget(Collection<String> subjects);

    @Modifying
    @Query("delete from SignInFailureRow f where f.blockedTo < ?1")
    int forgetBefore(Instant blockedTo);
}
