package org.bayhold.audit;

import java.io.OutputStream;
import tools.jackson.databind.SequenceWriter;
import tools.jackson.databind.json.JsonMapper;

/** An array of JSON that is written as it grows. */
final class JsonRows implements ExportRows {
    private final SequenceWriter json;

    JsonRows(OutputStream out, JsonMapper mapper) {
        this.json = mapper.writerFor(AuditedHandoff.class).writeValuesAsArray(out);
    }

    @Override
    public void add(AuditedHandoff row) {
        json.write(row);
    }

    @Override
    public void flush() {
        json.flush();
    }

    @Override
    public void close() {
        json.close();
    }
}
