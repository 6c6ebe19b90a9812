package org.bayhold.journal;

import jakarta.persistence.EntityManager;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.function.Supplier;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** Questions about many things at once, however long they take, all answered as of one moment. Nothing is written here. */
@Component
public class Snapshots {
    private final Database database;
    private final JdbcClient jdbc;
    private final EntityManager entities;

    Snapshots(Database database, JdbcClient jdbc, EntityManager entities) {
        this.database = database;
        this.jdbc = jdbc;
        this.entities = entities;
    }

    /** Runs {@code reading}; whatever this thread reads in it is of the moment at which it began. */
    public <T> T read(Supplier<T> reading) {
        return database.atOneMoment(reading);
    }

    /** Every row of the answer to {@code sql}, which is asked with named parameters. */
    public <T> List<T> rows(String sql, Map<String, ?> parameters, Function<Row, T> reader) {
        return jdbc.sql(sql)
                .params(parameters)
                .query((columns, number) -> reader.apply(new Row(columns)))
                .list();
    }

    /** Lets go of the entities that were read so far: a long reading would keep every one of them until its end. */
    public void forget() {
        entities.clear();
    }
}
