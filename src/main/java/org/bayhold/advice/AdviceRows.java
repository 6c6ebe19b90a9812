package org.bayhold.advice;

import java.util.List;
import java.util.UUID;
import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.Query;

interface AdviceRows extends JpaRepository<AdviceRow, UUID> {
    String FOUND = """
            (a.words like :q escape '!'
             or exists (select 1 from personal_data p
                        where p.id in (a.question_id, a.asked_by_id) and lower(p.text) like :q escape '!')
             or exists (select 1 from vehicle v where v.id = a.vehicle_id
                        and (lower(v.vin) like :q escape '!' or lower(v.frame_number) like :q escape '!'
                          or lower(v.description) like :q escape '!'
                          or exists (select 1 from personal_data p where p.id in (v.plate_id, v.owner_name_id)
                                     and lower(p.text) like :q escape '!'))))
            """;

    /** Answers that say the text, or are about a car that it names, in the order of their ids. */
    @Query(
            value = "select a.* from advice a where a.id > :after and " + FOUND + " order by a.id limit :size",
            nativeQuery = true)
    List<AdviceRow> find(String q, UUID after, int size);

    @Query(
            value = "select a.* from advice a where a.vehicle_id = :car and a.id > :after and " + FOUND
                    + " order by a.id limit :size",
            nativeQuery = true)
    List<AdviceRow> findOfCar(UUID car, String q, UUID after, int size);

    /** The newest first: ids grow with time. */
    @Query(value = "select a.* from advice a where " + FOUND + " order by a.id desc limit :size", nativeQuery = true)
    List<AdviceRow> newest(String q, int size);
}
