package org.bayhold.calibration;

import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import org.bayhold.journal.CanonicalJson;
import org.jspecify.annotations.Nullable;
import org.springframework.data.domain.Limit;
import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.Query;

interface CalibrationRows extends JpaRepository<CalibrationRow, UUID> {
    boolean existsByNameKey(String nameKey);

    /** A revision, and its withdrawal where it has one. */
    record Whole(CalibrationRow row, @Nullable WithdrawalRow withdrawal) {
        Revision revision(CanonicalJson json) {
            return row.revision(withdrawal == null ? null : withdrawal.withdrawnAt(), json);
        }
    }

    /** Few places times few maps: one question is cheaper than two. */
    @Query("select c, w from CalibrationRow c left join fetch c.coverage left join fetch c.maps"
            + " left join WithdrawalRow w on w.calibrationId = c.id where c.id in ?1")
    List<@Nullable Object[]> pairs(Collection<UUID> ids);

    default Map<UUID, Whole> whole(Collection<UUID> ids) {
        Map<UUID, Whole> found = new HashMap<>();
        for (@Nullable Object[] pair : pairs(ids)) {
            CalibrationRow row = (CalibrationRow) Objects.requireNonNull(pair[0]);
            found.put(row.getId(), new Whole(row, (WithdrawalRow) pair[1]));
        }
        return found;
    }

    @Query("select c.id from CalibrationRow c where c.calid = ?1 and c.cvn = ?2")
    List<UUID> reporting(@Nullable String calid, @Nullable String cvn);

    @Query("select c.id from CalibrationRow c where c.fileSha256 = ?1")
    List<UUID> ofFile(@Nullable String fileSha256);

    @Query("select c.id from CalibrationRow c where c.calid in ?1")
    List<UUID> reportingAny(Collection<String> calids);

    @Query("select c.id from CalibrationRow c where c.fileSha256 in ?1")
    List<UUID> ofAnyFile(Collection<String> fileSha256s);

    @Query("select c.id from CalibrationRow c where (?1 is null or c.ecuHardware = ?1)"
            + " and (c.nameKey like ?2 escape '!' or lower(c.calid) like ?2 escape '!') and c.id > ?3 order by c.id")
    List<UUID> find(@Nullable String ecuHardware, String like, UUID after, Limit limit);

    /** The newest first: ids grow with time. */
    @Query("select c.id from CalibrationRow c where c.nameKey like ?1 escape '!' or lower(c.calid) like ?1 escape '!'"
            + " or lower(c.ecuHardware) like ?1 escape '!' order by c.id desc")
    List<UUID> newest(String like, Limit limit);
}
