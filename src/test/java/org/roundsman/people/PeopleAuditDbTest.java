package org.roundsman.people;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowable;

import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import javax.sql.DataSource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.roundsman.audit.Actor;
import org.roundsman.audit.AuditEntry;
import org.roundsman.audit.AuditLog;
import org.roundsman.audit.AuditQuery;
import org.roundsman.web.Browser;

/** What happens to accounts leaves an entry, and no password does. OWASP ASVS 5.0, 16.3: security events are logged. */
@QuarkusTest
class PeopleAuditDbTest {

    private static final String PASSWORD = "heron-lantern-42";
    private static final String FRESH = "bittern-rowboat-77";

    @Inject
    Accounts accounts;

    @Inject
    AuditLog log;

    @Inject
    DataSource database;

    private String name;
    private long id;

    @BeforeEach
    void somebody() {
        name = "tern-" + UUID.randomUUID().toString().substring(0, 12);
        accounts.ensure(new NewPerson(name, "Tern", Role.TECHNICIAN, Optional.empty()), PASSWORD, false);
        id = account();
    }

    private long account() {
        return accounts.all().stream()
                .filter(person -> person.name().equals(name))
                .findFirst()
                .orElseThrow()
                .id();
    }

    @Test
    void whatAnOwnerDoesToAnAccount() throws SQLException {
        accounts.disable(id);
        accounts.enable(id);
        accounts.unlock(id);
        String random = accounts.resetPassword(id);
        assertThat(said())
                .containsExactly(
                        "roundsman added: sign-in name " + name + ", name on pages Tern, role technician, password set",
                        "roundsman disabled: ",
                        "roundsman enabled: ",
                        "roundsman unlocked: ",
                        "roundsman password reset: ");
        assertThat(rowsWith(PASSWORD)).isZero();
        assertThat(rowsWith(random)).isZero();
    }

    @Test
    void whatAnOwnerDoesOnThePageCarriesTheirNameAndAddress() {
        String owner = "owner-" + UUID.randomUUID().toString().substring(0, 12);
        accounts.ensure(new NewPerson(owner, "", Role.OWNER, Optional.empty()), PASSWORD, false);
        Browser browser = Browser.of(owner, PASSWORD);
        assertThat(browser.post("/people", "/people/" + id + "/disable", Map.of())
                        .statusCode())
                .isEqualTo(303);
        Actor actor = last().actor();
        assertThat(actor.name()).isEqualTo(owner);
        assertThat(actor.via()).isEqualTo(Actor.Via.PAGE);
        assertThat(actor.address()).isEqualTo("127.0.0.1");
        assertThat(last().action()).isEqualTo("disabled");
    }

    @Test
    void aPersonsOwnNewPassword() throws SQLException {
        Browser browser = Browser.of(name, PASSWORD);
        Map<String, String> fields = Map.of("old", PASSWORD, "password", FRESH, "again", FRESH);
        assertThat(browser.post("/password", "/password", fields).statusCode()).isEqualTo(303);
        assertThat(last().actor().name()).isEqualTo(name);
        assertThat(last().changes()).containsExactly(new AuditEntry.FieldChange("password", "set", "changed"));
        assertThat(rowsWith(FRESH)).isZero();
    }

    /** 6.3.1: the lock itself is worth an entry, the single wrong password stands in the log. */
    @Test
    void aLockAfterWrongPasswordsNamesTheAddressAndNobody() {
        Browser browser = new Browser();
        for (int i = 0; i < 7; i++) {
            browser.signIn(name, "wrong");
        }
        assertThat(said()).filteredOn(text -> text.contains("locked")).hasSize(1);
        AuditEntry entry = last();
        assertThat(entry.action()).isEqualTo("locked after wrong passwords");
        assertThat(entry.actor().accountId()).isNull();
        assertThat(entry.actor().address()).isEqualTo("127.0.0.1");
    }

    @Test
    void whatIsRefusedIsNotNoted() {
        assertThat(catchThrowable(() ->
                        accounts.ensure(new NewPerson("x", "", Role.TECHNICIAN, Optional.empty()), PASSWORD, false)))
                .isInstanceOf(PeopleException.class);
        assertThat(accounts.ensure(new NewPerson(name, "", Role.TECHNICIAN, Optional.empty()), PASSWORD, false))
                .isFalse();
        assertThat(said()).hasSize(1);
    }

    private List<AuditEntry> entries() {
        AuditQuery query = new AuditQuery("", "", "account", id, null, "", null, null);
        List<AuditEntry> entries = new ArrayList<>(log.find(query, Optional.empty(), 100));
        Collections.reverse(entries);
        return entries;
    }

    private AuditEntry last() {
        List<AuditEntry> entries = entries();
        return entries.get(entries.size() - 1);
    }

    private List<String> said() {
        return entries().stream()
                .map(entry -> entry.actor().name() + " " + entry.action() + ": "
                        + entry.changes().stream()
                                .map(change -> change.field() + " " + change.fresh())
                                .collect(Collectors.joining(", ")))
                .toList();
    }

    private long rowsWith(String word) throws SQLException {
        try (Connection connection = database.getConnection();
                Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery(
                        "select count(*) from audit_entry where audit_entry::text ilike '%" + word + "%'")) {
            rows.next();
            return rows.getLong(1);
        }
    }
}
