package org.roundsman.notices.store;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.roundsman.alarms.Severity;
import org.roundsman.notices.EscalationChain;
import org.roundsman.notices.thread.EscalationRule;

/** Tables notice_chain and notice_chain_step. */
public final class ChainTable {

    private ChainTable() {}

    /** All of them, the one for every customer first. */
    public static List<EscalationChain> all(Connection connection) throws SQLException {
        Map<Long, Map<Integer, Set<Long>>> steps = new LinkedHashMap<>();
        Rows.list(
                connection,
                "select chain_id, step, account_id from notice_chain_step order by chain_id, step, account_id",
                row -> steps.computeIfAbsent(row.getLong(1), id -> new LinkedHashMap<>())
                        .computeIfAbsent(row.getInt(2), step -> new LinkedHashSet<>())
                        .add(row.getLong(3)));
        return Rows.list(
                connection,
                "select * from notice_chain order by customer_id nulls first",
                row -> chain(row, steps.getOrDefault(row.getLong("id"), Map.of())));
    }

    private static EscalationChain chain(ResultSet row, Map<Integer, Set<Long>> steps) throws SQLException {
        long customer = row.getLong("customer_id");
        Optional<Long> of = row.wasNull() ? Optional.empty() : Optional.of(customer);
        return new EscalationChain(
                row.getLong("id"),
                of,
                Severity.ofCode(row.getInt("severity")),
                row.getInt("minutes"),
                row.getBoolean("service_hours"),
                new ArrayList<>(steps.values()));
    }

    /** Puts it in the place of the one of the same customer. */
    public static long put(Connection connection, EscalationChain chain) throws SQLException {
        long id = Rows.first(
                        connection,
                        "insert into notice_chain (customer_id, severity, minutes, service_hours) values (?, ?, ?, ?)"
                                + " on conflict (customer_id) do update set severity = excluded.severity,"
                                + " minutes = excluded.minutes, service_hours = excluded.service_hours returning id",
                        row -> row.getLong(1),
                        chain.customerId(),
                        chain.severity().code(),
                        chain.minutes(),
                        chain.serviceHours())
                .orElseThrow();
        Rows.run(connection, "delete from notice_chain_step where chain_id = ?", id);
        int step = 0;
        for (Set<Long> accounts : chain.steps()) {
            step++;
            for (long account : accounts) {
                Rows.run(connection, "insert into notice_chain_step values (?, ?, ?)", id, step, account);
            }
        }
        return id;
    }

    public static int remove(Connection connection, long id) throws SQLException {
        return Rows.run(connection, "delete from notice_chain where id = ?", id);
    }

    /** As the rule takes it. */
    public static EscalationRule.Chain rule(EscalationChain chain) {
        return new EscalationRule.Chain(
                chain.severity(), Duration.ofMinutes(chain.minutes()), chain.serviceHours(), chain.steps());
    }
}
