package org.roundsman.notices;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import javax.sql.DataSource;
import org.roundsman.alarms.Severity;
import org.roundsman.audit.AuditEntry.Subject;
import org.roundsman.audit.AuditTrail;
import org.roundsman.audit.AuditTrail.Note;
import org.roundsman.notices.store.OutboxTable;
import org.roundsman.notices.store.PersonTable;
import org.roundsman.notices.store.Rows;
import org.roundsman.notices.text.NoticeKind;
import org.roundsman.notices.text.Texts;
import org.roundsman.notices.thread.Recipient;
import org.roundsman.people.SignedIn;
import org.roundsman.shared.Page;

/** What was sent, what waits, and what was given up. Blocks on the database. */
@ApplicationScoped
public class Outbox {

    private static final String LINES =
            "select o.id, a.name as person, o.kind, o.content ->> 'subject' as subject, o.state, o.created_at,"
                    + " o.due_at, o.attempts, o.sent_at, o.failure, case when o.channel = 'mail' then 'mail' else"
                    + " coalesce('webhook ' || w.name, 'webhook, removed') end as way from notice_outbox o join account a"
                    + " on a.id = o.account_id left join notice_webhook w on o.channel = 'webhook-' || w.id";

    private final DataSource database;
    private final Texts texts;
    private final NoticeBeans beans;
    private final AuditTrail audit;
    private final Clock clock;

    @Inject
    Outbox(DataSource database, Texts texts, NoticeBeans beans, AuditTrail audit, Clock clock) {
        this.database = database;
        this.texts = texts;
        this.beans = beans;
        this.audit = audit;
        this.clock = clock;
    }

    /**
     * Messages, the newest first.
     *
     * @param state only in that one; empty for all
     * @param number of the page, from 1
     */
    public Page<OutboxLine> page(Optional<OutboxState> state, int number, int size) {
        String name = state.map(Enum::name).orElse(null);
        return Surroundings.whole(database, connection -> {
            long total = Rows.first(
                            connection,
                            "select count(*) from notice_outbox where ?::text is null or state = ?",
                            row -> row.getLong(1),
                            name,
                            name)
                    .orElse(0L);
            List<OutboxLine> lines = Rows.list(
                    connection,
                    LINES + " where ?::text is null or o.state = ? order by o.id desc limit ? offset ?",
                    Outbox::read,
                    name,
                    name,
                    size,
                    (long) (number - 1) * size);
            return new Page<>(lines, number, size, total);
        });
    }

    /**
     * Messages with smaller ids, the newest first.
     *
     * @param state only in that one; empty for all
     */
    public List<OutboxLine> before(Optional<OutboxState> state, long id, int most) {
        String name = state.map(Enum::name).orElse(null);
        return Surroundings.whole(
                database,
                connection -> Rows.list(
                        connection,
                        LINES + " where (?::text is null or o.state = ?) and o.id < ? order by o.id desc limit ?",
                        Outbox::read,
                        name,
                        name,
                        id,
                        most));
    }

    private static OutboxLine read(ResultSet row) throws SQLException {
        return new OutboxLine(
                row.getLong("id"),
                row.getString("person"),
                NoticeKind.valueOf(row.getString("kind")).word(),
                row.getString("way"),
                row.getString("subject"),
                OutboxState.valueOf(row.getString("state")),
                Rows.sure(row, "created_at"),
                Rows.sure(row, "due_at"),
                row.getInt("attempts"),
                Rows.moment(row, "sent_at"),
                row.getString("failure"));
    }

    /** How many messages are in which state. */
    public Map<OutboxState, Long> counts() {
        return Surroundings.whole(database, connection -> {
            Map<OutboxState, Long> counts = new EnumMap<>(OutboxState.class);
            for (OutboxState state : OutboxState.values()) {
                counts.put(state, 0L);
            }
            Rows.list(
                    connection,
                    "select state, count(*) from notice_outbox group by state",
                    row -> counts.put(OutboxState.valueOf(row.getString(1)), row.getLong(2)));
            return counts;
        });
    }

    /** Has a message that was given up tried again from now; whether there is such a one. */
    public boolean sendAgain(long id) {
        Instant now = clock.instant();
        return change(
                id,
                "sent again",
                "update notice_outbox set state = 'WAITING', attempts = 0, due_at = ?, give_up_at = ?"
                        + " where id = ? and state = 'DEAD'",
                now,
                now.plus(beans.config().giveUpAfter()),
                id);
    }

    /** Puts a message that was given up out of sight; whether there is such a one. */
    public boolean dismiss(long id) {
        return change(
                id, "dismissed", "update notice_outbox set state = 'DISMISSED' where id = ? and state = 'DEAD'", id);
    }

    private boolean change(long id, String action, String sql, Object... parameters) {
        return Surroundings.whole(database, connection -> {
            Optional<OutboxLine> line = Rows.first(connection, LINES + " where o.id = ?", Outbox::read, id);
            if (line.isEmpty() || Rows.run(connection, sql, parameters) == 0) {
                return false;
            }
            Subject subject = new Subject("message", id, line.get().subject(), null);
            audit.note(connection, List.of(new Note(action, subject, List.of())));
            return true;
        });
    }

    /** Has a message sent to that person by every way that is open to them; by how many. */
    public int test(SignedIn person) {
        Instant now = clock.instant();
        return Surroundings.whole(database, connection -> {
            List<String> channels = PersonTable.recipients(connection, beans.mailOpen()).stream()
                    .filter(one -> one.accountId() == person.accountId())
                    .map(Recipient::channels)
                    .findFirst()
                    .orElse(List.of());
            String state = "test-" + UUID.randomUUID();
            for (String channel : channels) {
                OutboxTable.Fresh test = new OutboxTable.Fresh(
                        Optional.empty(),
                        NoticeKind.TEST,
                        state,
                        person.accountId(),
                        channel,
                        Severity.INDETERMINATE,
                        texts.test(person.shownName()),
                        now,
                        now.plus(beans.config().giveUpAfter()));
                OutboxTable.add(connection, test, now);
            }
            Subject subject = new Subject("notices", person.accountId(), person.name(), null);
            audit.note(connection, List.of(new Note("tried", subject, List.of())));
            return channels.size();
        });
    }
}
