package org.bayhold.journal;

import java.nio.charset.StandardCharsets;
import java.security.SecureRandom;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.springframework.stereotype.Component;

/** Keeps personal data apart from the record and gives the text back while it is not erased. */
@Component
public class PersonalData {
    private static final int SALT_BYTES = 16;

    private final SecureRandom random = new SecureRandom();
    private final PersonalRows rows;

    PersonalData(PersonalRows rows) {
        this.rows = rows;
    }

    Personal keep(UUID chainId, String text, Instant at) {
        byte[] salt = new byte[SALT_BYTES];
        random.nextBytes(salt);
        UUID id = Ids.next();
        rows.save(new PersonalRow(id, chainId, salt, text, at));
        return new Personal(id, Hashing.sha256(salt, text.getBytes(StandardCharsets.UTF_8)));
    }

    /** The texts that are not erased, of the given references. Null references are passed over. */
    public Texts read(@Nullable Personal... references) {
        return readIds(Arrays.stream(references)
                .map(reference -> reference == null ? null : reference.id())
                .toList());
    }

    /** The texts that are not erased, by the id of their {@link Personal}. Null ids are passed over. */
    public Texts readIds(Collection<@Nullable UUID> ids) {
        List<UUID> given = new ArrayList<>();
        for (UUID id : ids) {
            if (id != null) {
                given.add(id);
            }
        }
        Map<UUID, String> texts = new HashMap<>();
        if (!given.isEmpty()) {
            for (PersonalRow row : rows.findAllById(given)) {
                String text = row.text();
                if (text != null) {
                    texts.put(row.getId(), text);
                }
            }
        }
        return new Texts(texts);
    }

    /** Texts that were read together. */
    public record Texts(Map<UUID, String> byId) {
        /** The text; null where nothing was kept or it was erased. */
        public @Nullable String of(@Nullable Personal reference) {
            return reference == null ? null : of(reference.id());
        }

        public @Nullable String of(@Nullable UUID id) {
            return id == null ? null : byId.get(id);
        }
    }
}
