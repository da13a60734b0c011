package org.roundsman.audit;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Instance;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.time.Clock;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Objects;
import java.util.function.Supplier;
import javax.sql.DataSource;
import org.roundsman.audit.AuditEntry.FieldChange;
import org.roundsman.audit.AuditEntry.Subject;

/**
 * Notes changes, in the transaction of whoever makes them: what is rolled back is not noted, and what is committed is.
 * Thread-safe.
 */
@ApplicationScoped
public class AuditTrail {

    private static final String INSERT = "insert into audit_entry (at, actor, account_id, via, token, address, action,"
            + " subject, subject_id, subject_name, customer_id, changes) values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?::jsonb)";

    private final ThreadLocal<Actor> acting = new ThreadLocal<>();
    private final DataSource database;
    private final Instance<ActorSource> sources;
    private final ObjectMapper json;
    private final Clock clock;

    @Inject
    AuditTrail(DataSource database, Instance<ActorSource> sources, ObjectMapper json, Clock clock) {
        this.database = database;
        this.sources = sources;
        this.json = json;
        this.clock = clock;
    }

    /**
     * One change to note.
     *
     * @param action past tense, such as {@code added}
     */
    public record Note(String action, Subject subject, List<FieldChange> changes) {}

    /** Who is behind what happens on this thread: whoever {@link #as} names, else the request, else the service itself. */
    public Actor actor() {
        Actor named = acting.get();
        if (named != null) {
            return named;
        }
        return sources.stream()
                .flatMap(source -> source.current().stream())
                .findFirst()
                .orElse(Actor.itself());
    }

    /** Does some work for somebody whose request has ended already, such as a long import. */
    public <T> T as(Actor actor, Supplier<T> work) {
        Actor before = acting.get();
        acting.set(actor);
        try {
            return work.get();
        } finally {
            if (before == null) {
                acting.remove();
            } else {
                acting.set(before);
            }
        }
    }

    /** Notes that something was added. */
    public void added(Subject subject, FieldSet fields) {
        note(List.of(new Note("added", subject, fields.asNew())));
    }

    /** Notes what differs; nothing where nothing does. */
    public void changed(Subject subject, FieldSet before, FieldSet after) {
        List<FieldChange> changes = FieldSet.between(before, after);
        if (!changes.isEmpty()) {
            note(List.of(new Note("changed", subject, changes)));
        }
    }

    /** Notes an action that says all by itself, such as {@code removed}. */
    public void did(String action, Subject subject) {
        note(List.of(new Note(action, subject, List.of())));
    }

    /** Notes several changes at once, in the transaction of this thread. */
    public void note(List<Note> notes) {
        try (Connection connection = database.getConnection()) {
            note(connection, notes);
        } catch (SQLException e) {
            throw new IllegalStateException("The audit could not be written: " + e.getMessage(), e);
        }
    }

    /** Notes several changes at once, in the transaction of this connection. */
    public void note(Connection connection, List<Note> notes) throws SQLException {
        Actor actor = actor();
        try (PreparedStatement statement = connection.prepareStatement(INSERT)) {
            for (Note note : notes) {
                fill(statement, actor, note);
                statement.addBatch();
            }
            statement.executeBatch();
        }
    }

    private void fill(PreparedStatement statement, Actor actor, Note note) throws SQLException {
        Subject subject = note.subject();
        statement.setObject(1, clock.instant().atOffset(ZoneOffset.UTC));
        statement.setString(2, text(actor.name()));
        statement.setObject(3, actor.accountId());
        statement.setString(4, actor.via().name());
        statement.setString(5, text(actor.token()));
        statement.setString(6, text(actor.address()));
        statement.setString(7, note.action());
        statement.setString(8, subject.kind());
        statement.setObject(9, subject.id());
        statement.setString(10, text(subject.name()));
        statement.setObject(11, subject.customerId());
        statement.setString(12, json(note.changes()));
    }

    private String json(List<FieldChange> changes) {
        try {
            return json.writeValueAsString(changes.stream()
                    .map(c -> new Field(c.field(), text(c.old()), text(c.fresh())))
                    .toList());
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("changes are plain texts", e);
        }
    }

    /** PostgreSQL text holds every character but U+0000. */
    private static String text(String value) {
        return Objects.toString(value, "").replace("\0", "\\x00");
    }

    private record Field(
            String field,
            String old,

            @com.fasterxml.jackson.annotation.JsonProperty("new")
            String fresh) {}
}
