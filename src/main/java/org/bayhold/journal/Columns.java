package org.bayhold.journal;

import java.lang.reflect.Field;
import java.lang.reflect.Modifier;
import java.sql.ResultSet;
import java.sql.ResultSetMetaData;
import java.sql.SQLException;
import java.sql.Types;
import java.time.OffsetDateTime;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Rows as maps from column to value, in values that compare equal whether they come from an entity or from a table. */
final class Columns {
    /** Where the fields of a class are stored: the same for each of its rows, of which a verification reads all. */
    private static final ClassValue<Map<String, Field>> STORED = new ClassValue<>() {
        @Override
        protected Map<String, Field> computeValue(Class<?> entity) {
            Map<String, Field> fields = new LinkedHashMap<>();
            for (Field field : entity.getDeclaredFields()) {
                if (!Modifier.isStatic(field.getModifiers())
                        && !field.isSynthetic()
                        && !Collection.class.isAssignableFrom(field.getType())) {
                    field.setAccessible(true);
                    fields.put(snakeCase(field.getName()), field);
                }
            }
            return fields;
        }
    };

    private Columns() {}

    /** The columns that an entity or an embeddable is stored in; collections have tables of their own. */
    static Map<String, @Nullable Object> of(Object entity) {
        Map<String, @Nullable Object> columns = new LinkedHashMap<>();
        STORED.get(entity.getClass()).forEach((column, field) -> columns.put(column, plain(value(field, entity))));
        return columns;
    }

    private static @Nullable Object value(Field field, Object entity) {
        try {
            return field.get(entity);
        } catch (IllegalAccessException e) {
            throw new IllegalStateException("a field that was made accessible is not", e);
        }
    }

    /** As Spring Boot's naming strategy does it. */
    private static String snakeCase(String name) {
        return name.replaceAll("([a-z0-9])([A-Z])", "$1_$2").toLowerCase(Locale.ROOT);
    }

    /** Whole numbers of any width are one kind, and an enum is its name. */
    static @Nullable Object plain(@Nullable Object value) {
        if (value instanceof Enum<?> constant) {
            return constant.name();
        }
        if (value instanceof Integer || value instanceof Short || value instanceof Byte) {
            return ((Number) value).longValue();
        }
        return value instanceof OffsetDateTime time ? time.toInstant() : value;
    }

    /** A row of any table. */
    static Map<String, @Nullable Object> read(ResultSet row, int rowNumber) throws SQLException {
        ResultSetMetaData about = row.getMetaData();
        Map<String, @Nullable Object> columns = new LinkedHashMap<>();
        for (int i = 1; i <= about.getColumnCount(); i++) {
            String name = about.getColumnLabel(i).toLowerCase(Locale.ROOT);
            columns.put(name, plain(read(row, i, about.getColumnType(i))));
        }
        return columns;
    }

    private static @Nullable Object read(ResultSet row, int column, int type) throws SQLException {
        return switch (type) {
            // PostgreSQL's driver calls its own type by the name of the one without a zone
            case Types.TIMESTAMP, Types.TIMESTAMP_WITH_TIMEZONE -> row.getObject(column, OffsetDateTime.class);
            case Types.CLOB, Types.VARCHAR, Types.LONGVARCHAR -> row.getString(column);
            default -> row.getObject(column);
        };
    }
}
