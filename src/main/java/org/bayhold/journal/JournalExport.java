package org.bayhold.journal;

import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;
import org.springframework.stereotype.Component;
import tools.jackson.databind.json.JsonMapper;

/**
 * The journal as JSON lines, an entry a line, chain by chain and each in order: {@code body} is the text that was hashed,
 * as a string, so that nothing in between can change its bytes.
 */
@Component
public class JournalExport {
    private final Database database;
    private final JournalPages pages;
    private final JsonMapper lines = JsonMapper.builder().build();

    JournalExport(Database database, JournalPages pages) {
        this.database = database;
        this.pages = pages;
    }

    /** @throws UncheckedIOException when {@code out} takes no more */
    public void write(OutputStream out) {
        database.atOneMoment(() -> {
            pages.read(page -> {
                try {
                    for (StoredEntry entry : page) {
                        out.write(line(entry));
                    }
                    out.flush();
                } catch (IOException e) {
                    throw new UncheckedIOException(e);
                }
                return true;
            });
            return true;
        });
    }

    private byte[] line(StoredEntry entry) {
        Map<String, String> line = new LinkedHashMap<>();
        line.put("body", entry.body());
        line.put("hash", entry.hash());
        return (lines.writeValueAsString(line) + "\n").getBytes(StandardCharsets.UTF_8);
    }
}
