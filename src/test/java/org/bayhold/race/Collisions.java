package org.bayhold.race;

import ch.qos.logback.classic.Level;
import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.classic.spi.IThrowableProxy;
import ch.qos.logback.classic.spi.ThrowableProxy;
import ch.qos.logback.core.AppenderBase;
import java.sql.SQLException;
import java.util.Map;
import java.util.TreeMap;
import org.bayhold.journal.WriteTemplate;
import org.slf4j.LoggerFactory;

/** How often a write met another and was begun again, by the database's reason, from what the template logs about it. */
final class Collisions extends AppenderBase<ILoggingEvent> implements AutoCloseable {
    /** SQLSTATE of a unique violation, on both databases. */
    static final String UNIQUE = "23505";

    private final Logger log = (Logger) LoggerFactory.getLogger(WriteTemplate.class);
    private final Level before = log.getLevel();
    private final boolean additive = log.isAdditive();
    private final Logger hibernates = (Logger) LoggerFactory.getLogger("org.hibernate.orm.jdbc.error");
    private final Level hibernatesBefore = hibernates.getLevel();
    private final Map<String, Integer> byState = new TreeMap<>();

    private Collisions() {}

    static Collisions counted() {
        Collisions collisions = new Collisions();
        collisions.setContext(collisions.log.getLoggerContext());
        collisions.start();
        collisions.log.setLevel(Level.DEBUG);
        collisions.log.setAdditive(false);
        collisions.log.addAppender(collisions);
        // it says of each the same as the template
        collisions.hibernates.setLevel(Level.OFF);
        return collisions;
    }

    @Override
    protected synchronized void append(ILoggingEvent event) {
        byState.merge(state(event.getThrowableProxy()), 1, Integer::sum);
    }

    synchronized Map<String, Integer> byState() {
        return Map.copyOf(byState);
    }

    private static String state(IThrowableProxy proxy) {
        Throwable cause = proxy instanceof ThrowableProxy known ? known.getThrowable() : null;
        while (cause != null) {
            if (cause instanceof SQLException sql && sql.getSQLState() != null) {
                return sql.getSQLState();
            }
            cause = cause.getCause();
        }
        return "?";
    }

    @Override
    public void close() {
        log.detachAppender(this);
        log.setLevel(before);
        log.setAdditive(additive);
        hibernates.setLevel(hibernatesBefore);
        stop();
    }
}
