package org.roundsman.readings.board;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.measure.Condition;
import org.roundsman.readings.sql.Sql;

/** Grows one SQL statement together with its parameters. */
final class BoardSql {

    /** Devices with their last rounds, one row a device; 4 is the code of unwatched. */
    private static final String UNITS = """
            select d.id device_id, d.name, d.kind, d.place, d.host, d.paused, d.site_id, d.model_id,
                   s.name site, s.time_zone, s.customer_id, c.name customer,
                   n.last_answered_at, n.outcome, n.uptime, n.busiest_radio, n.busiest_utilisation, n.clients,
                   n.condition known_condition, n.since known_since, o.overdue,
                   case when n.device_id is null or d.paused or o.overdue then 4 else n.condition end condition,
                   case when n.device_id is null or not (d.paused or o.overdue) or n.condition = 4 then n.since
                        else least(n.last_round_at + n.next_in_s * interval '1 second', ?::timestamptz) end since
              from device d
              join site s on s.id = d.site_id
              join customer c on c.id = s.customer_id
              left join device_now n on n.device_id = d.id
              left join lateral (
                   select n.last_round_at + n.next_in_s * interval '2.5 seconds' < ?::timestamptz overdue) o on true
             where true
            """;

    private static final String SITE_WORDS = "concat_ws(' ', c.name, s.name, s.street, s.postcode, s.town, s.country)";

    private final StringBuilder text = new StringBuilder();
    private final List<Object> parameters = new ArrayList<>();

    BoardSql add(String sql, Object... values) {
        text.append(sql);
        parameters.addAll(List.of(values));
        return this;
    }

    /**
     * All devices in the scope with their condition.
     *
     * @param now the present moment
     * @param watchedSince a device whose next round should have come long before that time is unwatched
     */
    BoardSql units(CustomerScope scope, OffsetDateTime now, OffsetDateTime watchedSince) {
        add(UNITS, now, watchedSince);
        return only(scope);
    }

    BoardSql only(CustomerScope scope) {
        return scope.onlyCustomer() == null ? this : add(" and s.customer_id = ?", scope.onlyCustomer());
    }

    /** Every word occurs somewhere in the texts of the device, its site or its customer. */
    BoardSql deviceHas(String search) {
        return has(
                "concat_ws(' ', " + SITE_WORDS + ", d.name, d.place, d.host, (select string_agg(value, ' ') from"
                        + " device_fact f where f.device_id = d.id and f.fact in ('SERIAL', 'BASE_MAC')))",
                search);
    }

    /** Every word occurs somewhere in the texts of the site or its customer. */
    BoardSql siteHas(String search) {
        return has(SITE_WORDS, search);
    }

    private BoardSql has(String haystack, String search) {
        for (String word : search.strip().toLowerCase(Locale.ROOT).split("\\s+")) {
            if (!word.isEmpty()) {
                add(" and position(? in lower(" + haystack + ")) > 0", word);
            }
        }
        return this;
    }

    /** The column is one of these ids; as one text, whose length no number of parameters bounds. */
    BoardSql oneOf(String column, Set<Long> ids) {
        String text = ids.stream().map(String::valueOf).collect(Collectors.joining(",", "{", "}"));
        return add(column + " = any (?::bigint[])", text);
    }

    BoardSql conditions(String column, Iterable<Condition> conditions) {
        List<String> codes = new ArrayList<>();
        conditions.forEach(condition -> codes.add(String.valueOf(condition.code())));
        return codes.isEmpty() ? this : add(" and " + column + " in (" + String.join(", ", codes) + ")");
    }

    /** One row of a page. */
    interface RowReader<T> {
        T read(ResultSet row) throws SQLException;
    }

    /** The rows of a page, and in {@code total} how many there are on all pages. */
    record Found<T>(List<T> rows, long total) {}

    /** Runs it; every row has the column {@code total}. */
    <T> Found<T> find(Connection connection, RowReader<T> reader) throws SQLException {
        List<T> rows = new ArrayList<>();
        long total = 0;
        try (var statement = prepare(connection);
                ResultSet row = statement.executeQuery()) {
            while (row.next()) {
                rows.add(reader.read(row));
                total = row.getLong("total");
            }
        }
        return new Found<>(rows, total);
    }

    PreparedStatement prepare(Connection connection) throws SQLException {
        PreparedStatement statement = connection.prepareStatement(text.toString());
        Sql.fill(statement, parameters.toArray());
        return statement;
    }
}
