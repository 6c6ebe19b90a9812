package org.bayhold.catalog;

import java.util.Collection;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.data.domain.Limit;
import org.springframework.data.jpa.repository.JpaRepository;
import org.springframework.data.jpa.repository.Query;

interface PartSpecs extends JpaRepository<PartSpecRow, UUID> {
    @Query("select count(p) > 0 from PartSpecRow p where p.nameKey = ?1")
    boolean isNamed(String nameKey);

    @Query("select p from PartSpecRow p where p.supersedes = ?1 order by p.id")
    List<PartSpecRow> superseding(UUID id);

    @Query("select p from PartSpecRow p where (?1 is null or p.category = ?1)"
            + " and p.nameKey like ?2 escape '!' and p.id > ?3 order by p.id")
    List<PartSpecRow> find(@Nullable Category category, String nameLike, UUID after, Limit limit);

    @Query("select p from PartSpecRow p where p.nameKey like ?1 escape '!' or p.category in ?2 order by p.id")
    List<PartSpecRow> search(String nameLike, Collection<Category> categories, Limit limit);
}
