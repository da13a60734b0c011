package org.roundsman.alarms.store;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import org.roundsman.alarms.AlarmSearch;
import org.roundsman.alarms.OpenAlarm;
import org.roundsman.audit.SearchWords;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.shared.Page;

/** Searches episodes, newest raise first. */
public final class SearchRows {

    private SearchRows() {}

    public static Page<OpenAlarm> search(Connection connection, CustomerScope scope, AlarmSearch search)
            throws SQLException {
        StringBuilder where = new StringBuilder(" where true");
        List<Object> values = new ArrayList<>();
        conditions(scope, search, where, values);
        long total = Sql.rows(
                        connection,
                        "select count(*) from alarm_episode e" + where,
                        row -> row.getLong(1),
                        values.toArray())
                .get(0);
        int last = (int) Math.max(1, (total + search.size() - 1) / search.size());
        int number = Math.min(search.number(), last);
        values.add(search.size());
        values.add((long) (number - 1) * search.size());
        String page = " where e.id in (select e.id from alarm_episode e" + where
                + " order by e.raised desc, e.id desc limit ? offset ?) order by e.raised desc, e.id desc";
        return new Page<>(OpenRows.find(connection, page, values.toArray()), number, search.size(), total);
    }

    /** Episodes before a number, the last begun first; the search's own page does not matter. */
    public static List<OpenAlarm> before(
            Connection connection, CustomerScope scope, AlarmSearch search, long before, int most) throws SQLException {
        StringBuilder where = new StringBuilder(" where e.id < ?");
        List<Object> values = new ArrayList<>(List.of(before));
        conditions(scope, search, where, values);
        values.add(most);
        return OpenRows.find(connection, where + " order by e.id desc limit ?", values.toArray());
    }

    private static void conditions(CustomerScope scope, AlarmSearch search, StringBuilder where, List<Object> values) {
        add(where, values, "e.customer_id = ?", scope.onlyCustomer());
        String question = SearchWords.question(search.words());
        add(where, values, "e.words @@ to_tsquery('simple', ?)", question.isEmpty() ? null : question);
        search.customerId().ifPresent(id -> add(where, values, "e.customer_id = ?", id));
        search.siteId().ifPresent(id -> add(where, values, "e.site_id = ?", id));
        search.deviceId().ifPresent(id -> add(where, values, "e.device_id = ?", id));
        search.type().ifPresent(type -> add(where, values, "e.type = ?", type.id()));
        search.severity().ifPresent(severity -> add(where, values, "e.highest >= ?", severity.code()));
        search.from().ifPresent(from -> add(where, values, "(e.cleared is null or e.cleared >= ?)", from));
        search.to().ifPresent(to -> add(where, values, "e.raised < ?", to));
        where.append(
                switch (search.state()) {
                    case ANY -> "";
                    case ACTIVE -> " and e.cleared is null";
                    case CLEARED -> " and e.cleared is not null";
                    case ACKNOWLEDGED -> " and e.cleared is null and e.operator = 'ACK'";
                    case UNTOUCHED -> " and e.cleared is null and e.operator = 'NONE'";
                    case SHELVED -> " and e.operator = 'SHELVED'";
                    case CLOSED -> " and e.operator = 'CLOSED'";
                });
    }

    private static void add(StringBuilder where, List<Object> values, String condition, Object value) {
        if (value != null) {
            where.append(" and ").append(condition);
            values.add(value);
        }
    }
}
