package org.roundsman.notices;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.security.SecureRandom;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.util.Base64;
import java.util.List;
import java.util.Optional;
import javax.sql.DataSource;
import org.roundsman.audit.AuditEntry.Subject;
import org.roundsman.audit.AuditTrail;
import org.roundsman.audit.AuditTrail.Note;
import org.roundsman.audit.FieldSet;
import org.roundsman.notices.send.Target;
import org.roundsman.notices.store.PersonTable;
import org.roundsman.notices.store.Rows;
import org.roundsman.people.Role;
import org.roundsman.people.SignedIn;
import org.roundsman.system.Sealer;

/** Webhooks of owners and technicians: each its person's own, an owner's look at everybody's. Blocks on the database. */
@ApplicationScoped
public class Webhooks {

    private static final int MOST = 5;
    private static final int LONGEST_NAME = 60;
    private static final int LONGEST_URL = 1_000;
    private static final int SECRET_OCTETS = 32;
    private static final String SELECT =
            "select w.*, a.name as person from notice_webhook w join account a on a.id = w.account_id";

    private final DataSource database;
    private final Sealer sealer;
    private final AuditTrail audit;
    private final Clock clock;
    private final SecureRandom random = new SecureRandom();

    @Inject
    Webhooks(DataSource database, Sealer sealer, AuditTrail audit, Clock clock) {
        this.database = database;
        this.sealer = sealer;
        this.audit = audit;
        this.clock = clock;
    }

    /** A secret that was made just now: shown once. */
    public record Made(Webhook webhook, String secret) {}

    /** The person's own; for an owner everybody's. */
    public List<Webhook> seenBy(SignedIn person) {
        return Surroundings.whole(
                database,
                connection -> Rows.list(
                        connection,
                        SELECT + " where ? or w.account_id = ? order by lower(a.name), lower(w.name)",
                        Webhooks::read,
                        person.role() == Role.OWNER,
                        person.accountId()));
    }

    private static Webhook read(ResultSet row) throws SQLException {
        return new Webhook(
                row.getLong("id"),
                row.getLong("account_id"),
                row.getString("person"),
                row.getString("name"),
                row.getString("url"),
                row.getBoolean("enabled"),
                Rows.sure(row, "created_at"),
                Rows.sure(row, "secret_at"));
    }

    /**
     * Makes one for that person, with a secret of its own.
     *
     * @throws NoticeRejected naming the field to mend: name or url
     */
    public Made add(SignedIn person, String name, String url) {
        check(name, url);
        return Surroundings.whole(database, connection -> {
            requireRoom(connection, person, name.strip());
            long id = Rows.first(
                            connection,
                            "insert into notice_webhook (account_id, name, url, created_at, secret_at)"
                                    + " values (?, ?, ?, ?, ?) returning id",
                            row -> row.getLong(1),
                            person.accountId(),
                            name.strip(),
                            url.strip(),
                            clock.instant(),
                            clock.instant())
                    .orElseThrow();
            String secret = freshSecret(connection, id);
            PersonTable.touch(connection, person.accountId(), clock.instant());
            Webhook made = find(connection, person, id).orElseThrow();
            FieldSet fields = new FieldSet()
                    .with("name", made.name())
                    .with("host", Target.of(made.url()).name())
                    .with("secret", "set");
            audit.note(connection, List.of(new Note("added", subject(made), fields.asNew())));
            return new Made(made, secret);
        });
    }

    private static void check(String name, String url) {
        String given = name == null ? "" : name.strip();
        if (given.isEmpty() || given.length() > LONGEST_NAME || given.chars().anyMatch(Character::isISOControl)) {
            throw NoticeRejected.of("name", "A name has 1 to " + LONGEST_NAME + " characters.");
        }
        if (url == null || url.strip().length() > LONGEST_URL) {
            throw NoticeRejected.of("url", "An address has at most " + LONGEST_URL + " characters.");
        }
        try {
            Target.of(url.strip());
        } catch (IllegalArgumentException e) {
            throw NoticeRejected.of("url", e.getMessage());
        }
    }

    private static void requireRoom(Connection connection, SignedIn person, String name) throws SQLException {
        // Held until the commit, so that two requests at once do not pass the limit together.
        Rows.list(
                connection,
                "select id from account where id = ? for update",
                row -> row.getLong(1),
                person.accountId());
        List<String> names = Rows.list(
                connection,
                "select name from notice_webhook where account_id = ?",
                row -> row.getString(1),
                person.accountId());
        if (names.stream().anyMatch(name::equalsIgnoreCase)) {
            throw NoticeRejected.of("name", "You have a webhook of this name already.");
        }
        if (names.size() >= MOST) {
            throw NoticeRejected.of("", "You have " + MOST + " webhooks. Remove one that you need no more.");
        }
    }

    private String freshSecret(Connection connection, long id) throws SQLException {
        byte[] octets = new byte[SECRET_OCTETS];
        random.nextBytes(octets);
        String secret = Base64.getUrlEncoder().withoutPadding().encodeToString(octets);
        Rows.run(
                connection,
                "update notice_webhook set secret = ?, secret_at = ? where id = ?",
                WebhookSeal.seal(sealer, id, secret),
                clock.instant(),
                id);
        return secret;
    }

    /** Gives it another secret, which counts at once; empty where there is no such webhook for that person. */
    public Optional<Made> rotate(SignedIn person, long id) {
        return Surroundings.whole(database, connection -> {
            Optional<Webhook> webhook = find(connection, person, id);
            if (webhook.isEmpty()) {
                return Optional.empty();
            }
            String secret = freshSecret(connection, id);
            var changes = new FieldSet().with("secret", "changed").asNew();
            audit.note(connection, List.of(new Note("changed", subject(webhook.get()), changes)));
            return Optional.of(new Made(webhook.get(), secret));
        });
    }

    /** Switches it on or off; whether there is such a webhook for that person. */
    public boolean enable(SignedIn person, long id, boolean on) {
        return Surroundings.whole(database, connection -> {
            Optional<Webhook> webhook = find(connection, person, id);
            if (webhook.isPresent() && webhook.get().enabled() != on) {
                Rows.run(connection, "update notice_webhook set enabled = ? where id = ?", on, id);
                PersonTable.touch(connection, webhook.get().accountId(), clock.instant());
                audit.note(
                        connection, List.of(new Note(on ? "enabled" : "disabled", subject(webhook.get()), List.of())));
            }
            return webhook.isPresent();
        });
    }

    /** Removes it; whether there was such a webhook for that person. */
    public boolean remove(SignedIn person, long id) {
        return Surroundings.whole(database, connection -> {
            Optional<Webhook> webhook = find(connection, person, id);
            if (webhook.isPresent()) {
                Rows.run(connection, "delete from notice_webhook where id = ?", id);
                audit.note(connection, List.of(new Note("removed", subject(webhook.get()), List.of())));
            }
            return webhook.isPresent();
        });
    }

    private static Optional<Webhook> find(Connection connection, SignedIn person, long id) throws SQLException {
        return Rows.first(
                connection,
                SELECT + " where w.id = ? and (? or w.account_id = ?)",
                Webhooks::read,
                id,
                person.role() == Role.OWNER,
                person.accountId());
    }

    private static Subject subject(Webhook webhook) {
        return new Subject("webhook", webhook.id(), webhook.name() + " of " + webhook.person(), null);
    }
}
