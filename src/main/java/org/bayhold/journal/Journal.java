package org.bayhold.journal;

import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.stereotype.Component;

/** Reading the journal. */
@Component
public class Journal {
    private final JournalEntries entries;
    private final CanonicalJson json;

    Journal(JournalEntries entries, CanonicalJson json) {
        this.entries = entries;
        this.json = json;
    }

    /** Every entry of a chain, in order. */
    public List<Entry> entriesOf(UUID chainId) {
        return entries.bodiesOf(chainId).stream()
                .map(body -> json.read(body, Entry.class))
                .toList();
    }

    /** The entries that recorded these, in no particular order. */
    public List<Entry> entries(Collection<UUID> ids) {
        return ids.isEmpty()
                ? List.of()
                : entries.bodies(ids).stream()
                        .map(body -> json.read(body, Entry.class))
                        .toList();
    }

    /** The hash of the entry that recorded {@code id}. */
    public Optional<String> hashOf(UUID id) {
        return entries.hashOf(id);
    }

    /** The chain that holds the record {@code id}. */
    public Optional<UUID> chainOf(UUID id) {
        return entries.chainOf(id);
    }
}
