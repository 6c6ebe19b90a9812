package org.bayhold.calibration;

import java.util.ArrayList;
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

    /** A revision, its maps, and its withdrawal where it has one. */
    record Whole(
            CalibrationRow row,
            List<MapRow.Stored> maps,
            @Nullable WithdrawalRow withdrawal) {
        /** As a write has it, with everything of it at hand. */
        static Whole of(CalibrationRow row, @Nullable WithdrawalRow withdrawal) {
            return new Whole(row, MapRow.maps(row.maps()), withdrawal);
        }

        Revision revision(CanonicalJson json) {
            List<CalibrationMap> named = maps.stream().map(MapRow.Stored::map).toList();
            return row.revision(named, withdrawal == null ? null : withdrawal.withdrawnAt(), json);
        }
    }

    /** The maps come in a question of their own: joined as well, each of their fuels would repeat the whole coverage. */
    @Query("select c.id, m from CalibrationRow c join c.maps m where c.id in ?1 order by c.id, index(m)")
    List<Object[]> mapsOf(Collection<UUID> ids);

    @Query("select c, w from CalibrationRow c left join fetch c.coverage"
            + " left join WithdrawalRow w on w.calibrationId = c.id where c.id in ?1")
    List<@Nullable Object[]> pairs(Collection<UUID> ids);

    default Map<UUID, Whole> whole(Collection<UUID> ids) {
        Map<UUID, List<MapRow>> maps = new HashMap<>();
        for (Object[] map : mapsOf(ids)) {
            maps.computeIfAbsent((UUID) map[0], id -> new ArrayList<>()).add((MapRow) map[1]);
        }
        Map<UUID, Whole> found = new HashMap<>();
        for (@Nullable Object[] pair : pairs(ids)) {
            CalibrationRow row = (CalibrationRow) Objects.requireNonNull(pair[0]);
            found.put(
                    row.getId(),
                    new Whole(row, MapRow.maps(maps.getOrDefault(row.getId(), List.of())), (WithdrawalRow) pair[1]));
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
