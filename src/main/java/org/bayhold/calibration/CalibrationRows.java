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

    @Query("select c, w, size(c.maps) from CalibrationRow c left join fetch c.coverage"
            + " left join WithdrawalRow w on w.calibrationId = c.id where c.id in ?1")
    List<@Nullable Object[]> rows(Collection<UUID> ids);

    @Query("select c.id, m from CalibrationRow c join c.maps m where c.id in ?1 order by c.id, index(m)")
    List<Object[]> maps(Collection<UUID> ids);

    /** Few revisions have maps, and they come in a question of their own: joined, each fuel would repeat the coverage. */
    default Map<UUID, Whole> whole(Collection<UUID> ids) {
        List<@Nullable Object[]> rows = rows(ids);
        List<UUID> withMaps = rows.stream()
                .filter(row -> (Integer) Objects.requireNonNull(row[2]) > 0)
                .map(row -> row(row).getId())
                .toList();
        Map<UUID, List<MapRow>> maps = new HashMap<>();
        for (Object[] map : withMaps.isEmpty() ? List.<Object[]>of() : maps(withMaps)) {
            maps.computeIfAbsent((UUID) map[0], id -> new ArrayList<>()).add((MapRow) map[1]);
        }
        Map<UUID, Whole> found = new HashMap<>();
        for (@Nullable Object[] row : rows) {
            CalibrationRow calibration = row(row);
            List<MapRow> its = maps.getOrDefault(calibration.getId(), List.of());
            found.put(calibration.getId(), new Whole(calibration, MapRow.maps(its), (WithdrawalRow) row[1]));
        }
        return found;
    }

    private static CalibrationRow row(@Nullable Object[] row) {
        return (CalibrationRow) Objects.requireNonNull(row[0]);
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
