package org.roundsman.rules.store;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javax.sql.DataSource;
import org.roundsman.rules.RuleLevel;
import org.roundsman.rules.RuleTarget;
import org.roundsman.rules.RuleTargets.Found;

/** What values can be set for, by name. Thread-safe. */
@ApplicationScoped
public class TargetTable {

    private static final String ALL = """
            select * from (
              select 1 sort, 'MODEL' level, m.id, m.maker || ' ' || m.name as name, 0::bigint whose from model m
              union all select 2, 'CUSTOMER', c.id, c.name, c.id from customer c
              union all select 3, 'SITE', s.id, c.name || ' – ' || s.name, c.id
                from site s join customer c on c.id = s.customer_id
              union all select 4, 'DEVICE', d.id, c.name || ' – ' || s.name || ' – ' || d.name, c.id
                from device d join site s on s.id = d.site_id join customer c on c.id = s.customer_id
            ) t where (?::bigint is null or whose = ?)
            """;

    private final DataSource database;

    @Inject
    public TargetTable(DataSource database) {
        this.database = database;
    }

    /** Those whose name holds every word. */
    public List<Found> search(String words, Long only, int most) {
        StringBuilder sql = new StringBuilder(ALL);
        List<Object> values = new ArrayList<>();
        values.add(only);
        values.add(only);
        for (String word : words.strip().toLowerCase(Locale.ROOT).split("\\s+")) {
            sql.append(" and position(? in lower(name)) > 0");
            values.add(word);
        }
        values.add(most);
        return ask(sql + " order by sort, lower(name), id limit ?", TargetTable::found, values);
    }

    public Optional<Found> find(RuleLevel level, long id, Long only) {
        List<Object> values = new ArrayList<>();
        values.add(only);
        values.add(only);
        values.add(level.name());
        values.add(id);
        return ask(ALL + " and level = ? and id = ?", TargetTable::found, values).stream()
                .findFirst();
    }

    public Optional<RuleTarget> device(long id) {
        return ask(
                        "select s.customer_id, d.site_id, coalesce(d.model_id, 0) from device d"
                                + " join site s on s.id = d.site_id where d.id = ?",
                        row -> new RuleTarget(row.getLong(1), row.getLong(2), row.getLong(3), id),
                        List.of(id))
                .stream()
                .findFirst();
    }

    public Optional<Long> customerOfSite(long id) {
        return ask("select customer_id from site where id = ?", row -> row.getLong(1), List.of(id)).stream()
                .findFirst();
    }

    private interface Row<T> {
        T of(ResultSet row) throws SQLException;
    }

    private static Found found(ResultSet row) throws SQLException {
        return new Found(RuleLevel.valueOf(row.getString("level")), row.getLong("id"), row.getString("name"));
    }

    private <T> List<T> ask(String sql, Row<T> reader, List<Object> values) {
        try (Connection connection = database.getConnection();
                PreparedStatement statement = connection.prepareStatement(sql)) {
            for (int i = 0; i < values.size(); i++) {
                if (values.get(i) == null) {
                    statement.setNull(i + 1, Types.BIGINT);
                } else {
                    statement.setObject(i + 1, values.get(i));
                }
            }
            try (ResultSet row = statement.executeQuery()) {
                List<T> rows = new ArrayList<>();
                while (row.next()) {
                    rows.add(reader.of(row));
                }
                return rows;
            }
        } catch (SQLException e) {
            throw new IllegalStateException("What rules can be set for could not be read: " + e.getMessage(), e);
        }
    }
}
