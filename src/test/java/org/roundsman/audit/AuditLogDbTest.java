package org.roundsman.audit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.sql.DataSource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.roundsman.audit.Actor.Via;
import org.roundsman.audit.AuditEntry.FieldChange;
import org.roundsman.audit.AuditEntry.Subject;
import org.roundsman.audit.AuditTrail.Note;
import org.roundsman.testing.TestDatabase;

/** What is noted stays, on a real PostgreSQL, and is found again. */
class AuditLogDbTest {

    private static final Instant NOON = Instant.parse("2026-03-04T12:00:00.123456Z");
    private static final Actor MARA = new Actor("Mara", 7L, Via.PAGE, "", "192.0.2.17");
    private static final Actor ROBOT = new Actor("tam", 8L, Via.API, "night import", "2001:db8::17");

    private DataSource database;
    private AuditLog log;

    @BeforeEach
    void someEntries() throws SQLException {
        database = TestDatabase.fresh("audit_log");
        log = new AuditLog(database);
        add(MARA, NOON, "added", new Subject("device", 1L, "Pier AP ap-3.example", 5L), "address", "", "192.0.2.44");
        add(
                ROBOT,
                NOON.plusSeconds(60),
                "changed",
                new Subject("site", 2L, "Café Müller", 5L),
                "note",
                "a\nb",
                "it's \"x\"");
        add(MARA, NOON.plusSeconds(120), "removed", new Subject("device", 1L, "Pier AP ap-3.example", 5L), "", "", "");
        add(
                Actor.itself(),
                NOON.plusSeconds(180),
                "added",
                new Subject("account", 9L, "owner", null),
                "role",
                "",
                "owner");
    }

    private void add(Actor actor, Instant at, String action, Subject subject, String field, String old, String fresh)
            throws SQLException {
        List<FieldChange> changes = field.isEmpty() ? List.of() : List.of(new FieldChange(field, old, fresh));
        try (Connection connection = database.getConnection()) {
            AuditEntries.add(connection, actor, at, List.of(new Note(action, subject, changes)));
        }
    }

    @Test
    void anEntryComesBackAsItWasNoted() {
        AuditEntry entry = only(new AuditQuery("", "", "site", null, null, "", null, null));
        assertThat(entry.actor()).isEqualTo(ROBOT);
        assertThat(entry.at()).isEqualTo(NOON.plusSeconds(60));
        assertThat(entry.action()).isEqualTo("changed");
        assertThat(entry.subject()).isEqualTo(new Subject("site", 2L, "Café Müller", 5L));
        assertThat(entry.changes()).containsExactly(new FieldChange("note", "a\nb", "it's \"x\""));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "pier|2",
                "PIER|2",
                "192.0.2.44|1",
                "192.0.2.4|1",
                "192.0.2.17|2",
                "ap-3.example|2",
                "example|2",
                "xample|0",
                "müller|1",
                "MÜLLER café|1",
                "night import|1",
                "2001:db8::17|1",
                "pier müller|0",
                "mara removed|1",
                "' OR 1=1 --|0",
                "':*|4",
                "((( & !|4",
                "b|1"
            })
    void wordsAreFoundByTheirBeginning(String text, int found) {
        assertThat(find(new AuditQuery(text, "", "", null, null, "", null, null)))
                .hasSize(found);
    }

    @Test
    void everyColumnNarrows() {
        assertThat(find(new AuditQuery("", "mara", "", null, null, "", null, null)))
                .hasSize(2);
        assertThat(find(new AuditQuery("", "", "device", 1L, null, "", null, null)))
                .hasSize(2);
        assertThat(find(new AuditQuery("", "", "device", 2L, null, "", null, null)))
                .isEmpty();
        assertThat(find(new AuditQuery("", "", "", null, 5L, "", null, null))).hasSize(3);
        assertThat(find(new AuditQuery("", "", "", null, null, "removed", null, null)))
                .hasSize(1);
        assertThat(find(new AuditQuery("", "", "", null, null, "", NOON.plusSeconds(60), NOON.plusSeconds(120))))
                .extracting(entry -> entry.subject().kind())
                .containsExactly("site");
        AuditLog.Choices choices = log.choices();
        assertThat(choices.actors()).containsExactly("mara", "roundsman", "tam");
        assertThat(choices.kinds()).containsExactly("account", "device", "site");
        assertThat(choices.actions()).containsExactly("added", "changed", "removed");
    }

    /** Entries of one transaction share their time: the page goes on at the very entry, and leaves none out. */
    @Test
    void pagesGoOnWhereTheLastOneEnded() throws SQLException {
        for (int i = 0; i < 2_500; i++) {
            add(
                    MARA,
                    NOON.plus(Duration.ofDays(i / 1_000)),
                    "added",
                    new Subject("device", 100L + i, "ap", 6L),
                    "",
                    "",
                    "");
        }
        List<Long> paged = new ArrayList<>();
        Optional<AuditLog.Place> before = Optional.empty();
        List<AuditEntry> page;
        do {
            page = log.find(AuditQuery.all(), before, 50);
            page.forEach(entry -> paged.add(entry.id()));
            before = page.isEmpty() ? before : Optional.of(AuditLog.Place.of(page.get(page.size() - 1)));
        } while (!page.isEmpty());
        assertThat(paged).hasSize(2_504).doesNotHaveDuplicates();
        List<Long> streamed = new ArrayList<>();
        log.each(AuditQuery.all(), entry -> streamed.add(entry.id()));
        assertThat(streamed).isEqualTo(paged);
        List<Instant> times = new ArrayList<>();
        log.each(AuditQuery.all(), entry -> times.add(entry.at()));
        assertThat(times).isSortedAccordingTo(java.util.Comparator.reverseOrder());
    }

    /** Also for an ordinary role that owns the table, as the service is one; P0001 is raise_exception (PostgreSQL, appendix A). */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "update audit_entry set actor = 'nobody'",
                "delete from audit_entry",
                "truncate audit_entry",
                "truncate audit_entry cascade",
                "with gone as (delete from audit_entry returning *) select * from gone"
            })
    void nothingIsEverChangedOrDeleted(String change) throws SQLException {
        for (boolean service : new boolean[] {false, true}) {
            try (Connection connection = database.getConnection();
                    Statement statement = connection.createStatement()) {
                if (service) {
                    becomeOrdinaryOwner(statement);
                }
                SQLException refused = catchThrowableOfType(SQLException.class, () -> statement.execute(change));
                assertThat((Throwable) refused).as(change).isNotNull();
                assertThat(refused.getMessage()).contains("never changed or deleted");
                assertThat(refused.getSQLState()).isEqualTo("P0001");
            }
        }
        assertThat(find(AuditQuery.all())).hasSize(4);
    }

    private static void becomeOrdinaryOwner(Statement statement) throws SQLException {
        statement.execute("do $$ begin if not exists (select from pg_roles where rolname = 'audit_owner') then"
                + " create role audit_owner; end if; end $$");
        statement.execute("grant usage, create on schema public to audit_owner");
        statement.execute("alter table audit_entry owner to audit_owner");
        statement.execute("set role audit_owner");
    }

    @Test
    void whatIsRolledBackIsNotNoted() throws SQLException {
        try (Connection connection = database.getConnection()) {
            connection.setAutoCommit(false);
            Note note = new Note("added", new Subject("device", 3L, "ap", 5L), List.of());
            AuditEntries.add(connection, MARA, NOON, List.of(note));
            connection.rollback();
        }
        assertThat(find(AuditQuery.all())).hasSize(4);
    }

    @Test
    void whateverDevicesAreCalledCanBeNoted() throws SQLException {
        String odd = "null \0, long " + "x".repeat(200_000);
        add(MARA, NOON, "changed", new Subject("device", 4L, "odd", 5L), "name", "", odd);
        assertThat(only(new AuditQuery("odd", "", "", null, null, "", null, null))
                        .changes())
                .containsExactly(new FieldChange("name", "", odd.replace("\0", "\\x00")));
    }

    private List<AuditEntry> find(AuditQuery query) {
        return log.find(query, Optional.empty(), 100);
    }

    private AuditEntry only(AuditQuery query) {
        List<AuditEntry> found = find(query);
        assertThat(found).hasSize(1);
        return found.get(0);
    }
}
