package org.bayhold.journal;

import com.zaxxer.hikari.HikariDataSource;
import org.springframework.beans.factory.config.BeanPostProcessor;
import org.springframework.stereotype.Component;

/**
 * Bounds every session on PostgreSQL, so that a statement or a lock that hangs becomes a refusal to come again, and no
 * forgotten transaction holds a car.
 */
@Component
final class PostgresSessions implements BeanPostProcessor {
    @Override
    public Object postProcessBeforeInitialization(Object bean, String name) {
        if (bean instanceof HikariDataSource pool
                && pool.getJdbcUrl() != null
                && pool.getJdbcUrl().startsWith("jdbc:postgresql:")
                && pool.getConnectionInitSql() == null) {
            pool.setConnectionInitSql("set lock_timeout = '5s'; set statement_timeout = '15s';"
                    + " set idle_in_transaction_session_timeout = '30s'");
        }
        return bean;
    }
}
