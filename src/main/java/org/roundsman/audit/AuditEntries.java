package org.roundsman.audit;

import com.fasterxml.jackson.annotation.JsonProperty;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Objects;
import org.roundsman.audit.AuditEntry.FieldChange;
import org.roundsman.audit.AuditEntry.Subject;
import org.roundsman.audit.AuditTrail.Note;
import org.roundsman.system.StorableText;

/** Writes entries, also where no container runs: in a command on the machine. Within the service use {@link AuditTrail}. */
public final class AuditEntries {

    private static final String INSERT = "insert into audit_entry (at, actor, account_id, via, token, address, action,"
            + " subject, subject_id, subject_name, customer_id, changes) values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?::jsonb)";

    private static final ObjectMapper JSON = new ObjectMapper();
    private static final TypeReference<List<Field>> FIELDS = new TypeReference<>() {};

    private AuditEntries() {}

    /** Adds entries in the transaction of this connection. */
    public static void add(Connection connection, Actor actor, Instant at, List<Note> notes) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement(INSERT)) {
            for (Note note : notes) {
                fill(statement, actor, at, note);
                statement.addBatch();
            }
            statement.executeBatch();
        }
    }

    private static void fill(PreparedStatement statement, Actor actor, Instant at, Note note) throws SQLException {
        Subject subject = note.subject();
        statement.setObject(1, at.atOffset(ZoneOffset.UTC));
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

    private static String json(List<FieldChange> changes) {
        try {
            return JSON.writeValueAsString(changes.stream()
                    .map(c -> new Field(c.field(), text(c.old()), text(c.fresh())))
                    .toList());
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("changes are plain texts", e);
        }
    }

    /** What {@link #json} made, read again. */
    static List<FieldChange> changes(String json) {
        try {
            return JSON.readValue(json, FIELDS).stream()
                    .map(f -> new FieldChange(f.field(), f.old(), f.fresh()))
                    .toList();
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("an entry of the audit holds changes that are none: " + json, e);
        }
    }

    /** PostgreSQL text holds every character but U+0000. */
    private static String text(String value) {
        return StorableText.of(Objects.toString(value, ""));
    }

    private record Field(
            String field, String old, @JsonProperty("new") String fresh) {}
}
