package org.roundsman.audit;

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
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Consumer;
import javax.sql.DataSource;
import org.roundsman.audit.AuditEntry.Subject;

/** Reads the audit, newest first. Callers see to it that only the firm's own people ask. */
@ApplicationScoped
public class AuditLog {

    private static final String COLUMNS =
            "select id, at, actor, account_id, via, token, address, action, subject, subject_id, subject_name,"
                    + " customer_id, changes from audit_entry where true";
    private static final int BATCH = 1_000;

    private final DataSource database;

    @Inject
    AuditLog(DataSource database) {
        this.database = database;
    }

    /** Where a page ended: the next one begins before it. */
    public record Place(Instant at, long id) {

        public static Place of(AuditEntry entry) {
            return new Place(entry.at(), entry.id());
        }
    }

    /** What a search form offers. */
    public record Choices(List<String> actors, List<String> kinds, List<String> actions) {}

    /**
     * Entries, newest first.
     *
     * @param before only entries before that place
     * @param most at most so many
     */
    public List<AuditEntry> find(AuditQuery query, Optional<Place> before, int most) {
        try (Connection connection = database.getConnection()) {
            return find(connection, query, before, most);
        } catch (SQLException e) {
            throw new IllegalStateException("The audit could not be read: " + e.getMessage(), e);
        }
    }

    /** Hands over every entry found, newest first, holding few of them in memory at a time. */
    public void each(AuditQuery query, Consumer<AuditEntry> taker) {
        Optional<Place> before = Optional.empty();
        List<AuditEntry> batch;
        do {
            batch = find(query, before, BATCH);
            batch.forEach(taker);
            before = batch.isEmpty() ? before : Optional.of(Place.of(batch.get(batch.size() - 1)));
        } while (batch.size() == BATCH);
    }

    /** Who changed something, what kinds of things were changed, and how, each in order of the alphabet. */
    public Choices choices() {
        try (Connection connection = database.getConnection()) {
            return new Choices(
                    distinct(connection, "lower(actor)"),
                    distinct(connection, "subject"),
                    distinct(connection, "action"));
        } catch (SQLException e) {
            throw new IllegalStateException("The audit could not be read: " + e.getMessage(), e);
        }
    }

    /** Jumps from value to value in the index, which takes no longer when there are a million entries. */
    private static List<String> distinct(Connection connection, String what) throws SQLException {
        String first = "(select " + what + " as value from audit_entry order by " + what + " limit 1)";
        String next = "select (select " + what + " from audit_entry where " + what + " > known.value order by " + what
                + " limit 1) from known where known.value is not null";
        String all = "with recursive known as (" + first + " union all " + next
                + ") select value from known where value is not null";
        try (PreparedStatement statement = connection.prepareStatement(all);
                ResultSet rows = statement.executeQuery()) {
            List<String> values = new ArrayList<>();
            while (rows.next()) {
                values.add(rows.getString(1));
            }
            return values;
        }
    }

    private static List<AuditEntry> find(Connection connection, AuditQuery query, Optional<Place> before, int most)
            throws SQLException {
        StringBuilder sql = new StringBuilder(COLUMNS);
        List<Object> values = new ArrayList<>();
        conditions(query, sql, values);
        before.ifPresent(place -> {
            sql.append(" and (at, id) < (?, ?)");
            values.add(utc(place.at()));
            values.add(place.id());
        });
        sql.append(" order by at desc, id desc limit ?");
        values.add(most);
        try (PreparedStatement statement = connection.prepareStatement(sql.toString())) {
            for (int i = 0; i < values.size(); i++) {
                statement.setObject(i + 1, values.get(i));
            }
            try (ResultSet rows = statement.executeQuery()) {
                List<AuditEntry> found = new ArrayList<>();
                while (rows.next()) {
                    found.add(entry(rows));
                }
                return found;
            }
        }
    }

    private static void conditions(AuditQuery query, StringBuilder sql, List<Object> values) {
        String question = SearchWords.question(query.text());
        add(sql, values, "words @@ to_tsquery('simple', ?)", question.isEmpty() ? null : question);
        add(sql, values, "lower(actor) = ?", empty(query.actor().toLowerCase(Locale.ROOT)));
        add(sql, values, "subject = ?", empty(query.kind()));
        add(sql, values, "subject_id = ?", query.subjectId());
        add(sql, values, "customer_id = ?", query.customerId());
        add(sql, values, "action = ?", empty(query.action()));
        add(sql, values, "at >= ?", query.from() == null ? null : utc(query.from()));
        add(sql, values, "at < ?", query.to() == null ? null : utc(query.to()));
    }

    private static void add(StringBuilder sql, List<Object> values, String condition, Object value) {
        if (value != null) {
            sql.append(" and ").append(condition);
            values.add(value);
        }
    }

    private static String empty(String text) {
        return text.isBlank() ? null : text.strip();
    }

    private static OffsetDateTime utc(Instant at) {
        return at.atOffset(ZoneOffset.UTC);
    }

    private static AuditEntry entry(ResultSet row) throws SQLException {
        Actor actor = new Actor(
                row.getString("actor"),
                row.getObject("account_id", Long.class),
                Actor.Via.valueOf(row.getString("via")),
                row.getString("token"),
                row.getString("address"));
        Subject subject = new Subject(
                row.getString("subject"),
                row.getObject("subject_id", Long.class),
                row.getString("subject_name"),
                row.getObject("customer_id", Long.class));
        return new AuditEntry(
                row.getLong("id"),
                row.getObject("at", OffsetDateTime.class).toInstant(),
                actor,
                row.getString("action"),
                subject,
                AuditEntries.changes(row.getString("changes")));
    }
}
