package org.roundsman.audit;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Instance;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Clock;
import java.util.List;
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

    private final ThreadLocal<Actor> acting = new ThreadLocal<>();
    private final DataSource database;
    private final Instance<ActorSource> sources;
    private final Clock clock;

    @Inject
    AuditTrail(DataSource database, Instance<ActorSource> sources, Clock clock) {
        this.database = database;
        this.sources = sources;
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
        AuditEntries.add(connection, actor(), clock.instant(), notes);
    }
}
