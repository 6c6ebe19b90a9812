package org.bayhold.buildsheet;

import jakarta.persistence.EntityManager;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.Proxy;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.function.BooleanSupplier;
import org.springframework.beans.factory.config.BeanPostProcessor;
import org.springframework.context.support.GenericApplicationContext;
import org.springframework.jdbc.core.simple.JdbcClient;

/**
 * Without step 1 the head was not advanced, and the condition in {@link FactRows#insertClearHandover} would refuse every
 * CLEAR handover. This writes it on the condition that belongs to such a head, or on none.
 */
public final class UnlockedHandover implements BeanPostProcessor {
    private static final String COLUMNS = "insert into fact"
            + " (id, vehicle_id, seq, kind, effective_at, recorded_at, recorded_by, basis, failed_checks, rules)";
    private static final String VALUES =
            " select cast(? as uuid), h.chain_id, ?, 'HANDED_OVER', ?, ?, cast(? as uuid), 'CLEAR', ?, cast(? as integer)"
                    + " from chain_head h where h.chain_id = ?";
    private static final String CONDITION = " and h.seq = ? - 1 and h.open_item_id is null";

    private final GenericApplicationContext application;
    private final BooleanSupplier firstStepIsOut;
    private volatile boolean conditional = true;

    public UnlockedHandover(GenericApplicationContext application, BooleanSupplier firstStepIsOut) {
        this.application = application;
        this.firstStepIsOut = firstStepIsOut;
    }

    public void withoutCondition() {
        conditional = false;
    }

    @Override
    public Object postProcessAfterInitialization(Object bean, String name) {
        if (!(bean instanceof FactRows)) {
            return bean;
        }
        return Proxy.newProxyInstance(
                FactRows.class.getClassLoader(), new Class<?>[] {FactRows.class}, (proxy, method, arguments) -> {
                    boolean mine = method.getName().equals("insertClearHandover") && firstStepIsOut.getAsBoolean();
                    return mine ? insert(arguments) : ask(bean, method, arguments);
                });
    }

    private static Object ask(Object bean, Method method, Object[] arguments) throws Throwable {
        try {
            return method.invoke(bean, arguments);
        } catch (InvocationTargetException e) {
            throw e.getCause();
        }
    }

    /** Takes what {@link FactRows#insertClearHandover} takes. */
    private int insert(Object[] given) {
        application.getBean(EntityManager.class).flush();
        Object[] values = Arrays.stream(given)
                .map(value -> value instanceof Instant time ? OffsetDateTime.ofInstant(time, ZoneOffset.UTC) : value)
                .toArray();
        JdbcClient.StatementSpec insert = application
                .getBean(JdbcClient.class)
                .sql(COLUMNS + VALUES + (conditional ? CONDITION : ""))
                .params(values[0], values[2], values[3], values[4], values[5], values[6], values[7], values[1]);
        return (conditional ? insert.param(values[2]) : insert).update();
    }
}
