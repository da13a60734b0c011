package org.roundsman.rules.store;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.databind.ObjectMapper;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import javax.sql.DataSource;
import org.roundsman.alarms.AlarmType;
import org.roundsman.rules.RuleField;
import org.roundsman.rules.RuleLevel;
import org.roundsman.rules.RuleOverride;

/** The table of overrides, in the transaction of the thread if there is one. Thread-safe. */
@ApplicationScoped
public class OverrideTable {

    private static final ObjectMapper JSON = new ObjectMapper();
    private static final String SELECT = """
            select o.*, coalesce(c.id, s.customer_id, ds.customer_id, 0) whose,
                   coalesce(c.name, sc.name || ' – ' || s.name, m.maker || ' ' || m.name,
                            dc.name || ' – ' || ds.name || ' – ' || d.name, '') target_name
            from rule_override o
            left join customer c on c.id = o.customer_id
            left join site s on s.id = o.site_id left join customer sc on sc.id = s.customer_id
            left join model m on m.id = o.model_id
            left join device d on d.id = o.device_id left join site ds on ds.id = d.site_id
            left join customer dc on dc.id = ds.customer_id
            """;
    private static final String TARGET = """
            select 0 whose, maker || ' ' || name from model where 'MODEL' = ? and id = ?
            union all select id, name from customer where 'CUSTOMER' = ? and id = ?
            union all select c.id, c.name || ' – ' || s.name from site s join customer c on c.id = s.customer_id
                where 'SITE' = ? and s.id = ?
            union all select c.id, c.name || ' – ' || s.name || ' – ' || d.name from device d
                join site s on s.id = d.site_id join customer c on c.id = s.customer_id where 'DEVICE' = ? and d.id = ?
            """;

    private final DataSource database;

    @Inject
    public OverrideTable(DataSource database) {
        this.database = database;
    }

    /** What an override is for. */
    public record Target(RuleLevel level, long id, long customerId, String name) {}

    /** What is written of an override. */
    public record Writing(Map<RuleField, String> fields, String reason, String author, Instant at) {}

    /** All of them, by type, level and name. */
    public List<RuleOverride> all() {
        return list(SELECT + " order by o.type, o.level, target_name, o.id");
    }

    public Optional<RuleOverride> find(long id) {
        return list(SELECT + " where o.id = ?", id).stream().findFirst();
    }

    public Optional<RuleOverride> find(AlarmType type, RuleLevel level, long targetId) {
        return list(SELECT + " where o.type = ? and o.level = ? and o.target_id = ?", type.id(), level.name(), targetId)
                .stream()
                .findFirst();
    }

    /** The model, customer, site or device with that id, if it is there. */
    public Optional<Target> target(RuleLevel level, long id) {
        if (level == RuleLevel.ALL) {
            return Optional.of(new Target(level, 0, 0, ""));
        }
        String name = level.name();
        return ask(
                        TARGET,
                        row -> new Target(level, id, row.getLong(1), row.getString(2)),
                        name,
                        id,
                        name,
                        id,
                        name,
                        id,
                        name,
                        id)
                .stream()
                .findFirst();
    }

    /** Adds one; false when somebody else did meanwhile. */
    public boolean add(AlarmType type, Target target, Writing writing) {
        String column = target.level().name().toLowerCase(java.util.Locale.ROOT) + "_id";
        boolean all = target.level() == RuleLevel.ALL;
        List<Object> values = new ArrayList<>(List.of(
                type.id(),
                target.level().name(),
                json(writing.fields()),
                writing.reason(),
                writing.author(),
                writing.at()));
        if (!all) {
            values.add(target.id());
        }
        return change(
                        "insert into rule_override (type, level, fields, reason, author, at"
                                + (all ? "" : ", " + column) + ") values (?, ?, ?::jsonb, ?, ?, ?" + (all ? "" : ", ?")
                                + ") on conflict do nothing",
                        values.toArray())
                == 1;
    }

    /** Changes one; false when it has another version by now. */
    public boolean change(long id, int version, Writing writing) {
        return change(
                        "update rule_override set fields = ?::jsonb, reason = ?, author = ?, at = ?, version = version + 1"
                                + " where id = ? and version = ?",
                        json(writing.fields()),
                        writing.reason(),
                        writing.author(),
                        writing.at(),
                        id,
                        version)
                == 1;
    }

    /** Removes one; false when it has another version by now. */
    public boolean remove(long id, int version) {
        return change("delete from rule_override where id = ? and version = ?", id, version) == 1;
    }

    private interface Row<T> {
        T of(ResultSet row) throws SQLException;
    }

    private List<RuleOverride> list(String sql, Object... values) {
        return ask(sql, OverrideTable::override, values).stream()
                .flatMap(Optional::stream)
                .toList();
    }

    private <T> List<T> ask(String sql, Row<T> reader, Object... values) {
        try (Connection connection = database.getConnection();
                PreparedStatement statement = filled(connection, sql, values);
                ResultSet row = statement.executeQuery()) {
            List<T> rows = new ArrayList<>();
            while (row.next()) {
                rows.add(reader.of(row));
            }
            return rows;
        } catch (SQLException e) {
            throw new IllegalStateException("Rules could not be read: " + e.getMessage(), e);
        }
    }

    private int change(String sql, Object... values) {
        try (Connection connection = database.getConnection();
                PreparedStatement statement = filled(connection, sql, values)) {
            return statement.executeUpdate();
        } catch (SQLException e) {
            throw new IllegalStateException("Rules could not be written: " + e.getMessage(), e);
        }
    }

    private static PreparedStatement filled(Connection connection, String sql, Object... values) throws SQLException {
        PreparedStatement statement = connection.prepareStatement(sql);
        for (int i = 0; i < values.length; i++) {
            Object value = values[i];
            statement.setObject(i + 1, value instanceof Instant at ? at.atOffset(ZoneOffset.UTC) : value);
        }
        return statement;
    }

    /** Empty for a type that this version does not know any more. */
    private static Optional<RuleOverride> override(ResultSet row) throws SQLException {
        Optional<AlarmType> type = AlarmType.byId(row.getString("type"));
        if (type.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new RuleOverride(
                row.getLong("id"),
                type.get(),
                RuleLevel.valueOf(row.getString("level")),
                row.getLong("target_id"),
                row.getString("target_name"),
                row.getLong("whose"),
                fields(row.getString("fields")),
                row.getString("reason"),
                row.getInt("version"),
                row.getString("author"),
                row.getObject("at", OffsetDateTime.class).toInstant()));
    }

    private static String json(Map<RuleField, String> fields) {
        Map<String, String> byKey = new TreeMap<>();
        fields.forEach((field, text) -> byKey.put(field.key(), text));
        try {
            return JSON.writeValueAsString(byKey);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException(e); // a map of texts
        }
    }

    private static Map<RuleField, String> fields(String json) {
        try {
            Map<RuleField, String> fields = new EnumMap<>(RuleField.class);
            JSON.readValue(json, new TypeReference<Map<String, String>>() {})
                    .forEach((key, text) -> RuleField.byKey(key).ifPresent(field -> fields.put(field, text)));
            return fields;
        } catch (JsonProcessingException e) {
            throw new IllegalStateException(
                    "The values of a rule in the database cannot be read: " + e.getMessage(), e);
        }
    }
}
