package org.bayhold.journal;

import jakarta.persistence.MappedSuperclass;
import jakarta.persistence.Transient;
import org.jspecify.annotations.Nullable;
import org.springframework.data.domain.Persistable;

/** A row that is written once: saving it is always an insert, so that no write reads before it. */
@MappedSuperclass
public abstract class AppendOnly<K> implements Persistable<K> {
    @Override
    @Transient
    public boolean isNew() {
        return true;
    }

    @Override
    public abstract @Nullable K getId();
}
