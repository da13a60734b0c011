package org.roundsman.notices;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import javax.sql.DataSource;
import org.roundsman.audit.AuditEntry.Subject;
import org.roundsman.audit.AuditTrail;
import org.roundsman.audit.AuditTrail.Note;
import org.roundsman.audit.FieldSet;
import org.roundsman.mail.MailServer;
import org.roundsman.notices.store.ChainTable;
import org.roundsman.notices.store.PersonTable;
import org.roundsman.notices.store.Rows;
import org.roundsman.notices.thread.Recipient;

/** Who is told next while nobody acknowledges: for the owner. Blocks on the database. */
@ApplicationScoped
public class EscalationChains {

    private static final int MOST_STEPS = 10;
    private static final int LONGEST_MINUTES = 1_440;

    private final DataSource database;
    private final AuditTrail audit;
    private final MailServer mail;

    @Inject
    EscalationChains(DataSource database, AuditTrail audit, MailServer mail) {
        this.database = database;
        this.audit = audit;
        this.mail = mail;
    }

    /** All of them, the one for every customer first. */
    public List<EscalationChain> all() {
        return Surroundings.whole(database, ChainTable::all);
    }

    /**
     * Somebody who can stand in a chain.
     *
     * @param reachable whether an escalation would reach them now: a way is open, and they want escalations
     */
    public record Member(long accountId, String name, boolean reachable) {}

    /** The firm's own people who can sign in, by name. */
    public List<Member> members() {
        return Surroundings.whole(database, connection -> {
            Set<Long> reached = PersonTable.recipients(connection, mail.state().ready()).stream()
                    .filter(person -> !person.channels().isEmpty() && person.wants(NoticeEvent.ESCALATION))
                    .map(Recipient::accountId)
                    .collect(Collectors.toSet());
            return Rows.list(
                    connection,
                    "select id, coalesce(nullif(shown_name, ''), name) as called from account"
                            + " where not disabled and role <> 'VIEWER' order by lower(name)",
                    row -> new Member(row.getLong(1), row.getString(2), reached.contains(row.getLong(1))));
        });
    }

    /**
     * Puts it in the place of the one of the same customer.
     *
     * @throws NoticeRejected naming the field to mend: customer, minutes or steps
     */
    public void put(EscalationChain chain) {
        check(chain);
        Surroundings.whole(database, connection -> {
            Map<Long, String> names = names(connection);
            boolean known = chain.steps().stream().flatMap(Set::stream).allMatch(names::containsKey);
            if (!known) {
                throw NoticeRejected.of("steps", "Somebody in it is not there any more.");
            }
            Optional<EscalationChain> before = ChainTable.all(connection).stream()
                    .filter(one -> one.customerId().equals(chain.customerId()))
                    .findFirst();
            Subject subject = subject(connection, chain.customerId());
            long id = ChainTable.put(connection, chain);
            FieldSet old = before.map(one -> fields(one, names)).orElse(new FieldSet());
            var changes = FieldSet.between(old, fields(chain, names));
            if (!changes.isEmpty()) {
                Subject stored = new Subject(subject.kind(), id, subject.name(), subject.customerId());
                audit.note(connection, List.of(new Note(before.isEmpty() ? "added" : "changed", stored, changes)));
            }
            return null;
        });
    }

    private static void check(EscalationChain chain) {
        if (chain.minutes() < 1 || chain.minutes() > LONGEST_MINUTES) {
            throw NoticeRejected.of("minutes", "From 1 to " + LONGEST_MINUTES + " minutes.");
        }
        boolean empty = chain.steps().isEmpty() || chain.steps().stream().anyMatch(Set::isEmpty);
        if (empty || chain.steps().size() > MOST_STEPS) {
            throw NoticeRejected.of("steps", "A chain has 1 to " + MOST_STEPS + " steps, each with somebody in it.");
        }
    }

    /** Removes it; whether there was one. */
    public boolean remove(long id) {
        return Surroundings.whole(database, connection -> {
            Optional<EscalationChain> chain = ChainTable.all(connection).stream()
                    .filter(one -> one.id() == id)
                    .findFirst();
            if (chain.isPresent()) {
                Subject subject = subject(connection, chain.get().customerId());
                ChainTable.remove(connection, id);
                Subject stored = new Subject(subject.kind(), id, subject.name(), subject.customerId());
                audit.note(connection, List.of(new Note("removed", stored, List.of())));
            }
            return chain.isPresent();
        });
    }

    private static Subject subject(Connection connection, Optional<Long> customer) throws SQLException {
        if (customer.isEmpty()) {
            return new Subject("escalation", null, "all customers", null);
        }
        String name = Rows.first(
                        connection, "select name from customer where id = ?", row -> row.getString(1), customer.get())
                .orElseThrow(() -> NoticeRejected.of("customer", "This customer is not there any more."));
        return new Subject("escalation", null, name, customer.get());
    }

    private static Map<Long, String> names(Connection connection) throws SQLException {
        Map<Long, String> names = new HashMap<>();
        Rows.list(
                connection,
                "select id, name from account where role <> 'VIEWER'",
                row -> names.put(row.getLong(1), row.getString(2)));
        return names;
    }

    private static FieldSet fields(EscalationChain chain, Map<Long, String> names) {
        List<String> steps = new ArrayList<>();
        for (Set<Long> step : chain.steps()) {
            steps.add(step.stream().map(names::get).sorted().collect(Collectors.joining(" and ")));
        }
        return new FieldSet()
                .with("from severity", chain.severity().word())
                .with("minutes", chain.minutes())
                .with("in service hours only", chain.serviceHours() ? "yes" : "no")
                .with("steps", String.join(", then ", steps));
    }
}
