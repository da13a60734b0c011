package org.roundsman.system;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.awaitility.Awaitility.await;

import java.net.InetSocketAddress;
import java.net.Socket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.time.Duration;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class EmbeddedDatabaseDbTest {

    @TempDir
    Path folder;

    private DataFolder data;

    @BeforeEach
    void dataFolder() {
        data = DataFolder.at(folder.resolve("data"));
    }

    @Test
    void whatIsCommittedIsOnDiskAndOnlyWeGetIn() throws Exception {
        try (EmbeddedDatabase database = EmbeddedDatabase.start(data, 0)) {
            assertThat(ask(database, "show fsync")).isEqualTo("on");
            assertThat(ask(database, "show synchronous_commit")).isEqualTo("on");
            assertThat(ask(database, "show full_page_writes")).isEqualTo("on");
            assertThat(ask(database, "show server_version")).startsWith("18.");
            assertThat(ask(database, "select rolsuper from pg_roles where rolname = current_user"))
                    .isEqualTo("f");
            assertThatThrownBy(
                            () -> DriverManager.getConnection(database.address().url(), "roundsman", "wrong"))
                    .isInstanceOfSatisfying(
                            SQLException.class,
                            // 28P01 = invalid_password: PostgreSQL documentation, appendix A
                            e -> assertThat(e.getSQLState()).isEqualTo("28P01"));
            assertThat(takesConnections("127.0.0.1", database.port())).isTrue();
            assertThat(takesConnections("127.0.0.2", database.port())).isFalse();
        }
        assertThat(permissions("data")).isEqualTo("rwx------");
        assertThat(permissions("data/postgres")).isEqualTo("rwx------");
        assertThat(permissions("data/database.password")).isEqualTo("rw-------");
    }

    @Test
    void aSecondStartHasTheSamePortAndRows() throws Exception {
        int port;
        long pid;
        try (EmbeddedDatabase database = EmbeddedDatabase.start(data, 0)) {
            tell(database, "create table kept as select 42 as answer");
            port = database.port();
            pid = database.pid();
        }
        assertThat(ProcessHandle.of(pid)).isEmpty();
        try (EmbeddedDatabase database = EmbeddedDatabase.start(data, 0)) {
            assertThat(database.port()).isEqualTo(port);
            assertThat(ask(database, "select answer from kept")).isEqualTo("42");
        }
    }

    @Test
    void aServerThatDiesIsStartedAgainOnItsPortWithEveryCommittedRow() throws Exception {
        try (EmbeddedDatabase database = EmbeddedDatabase.start(data, 0)) {
            tell(database, "create table kept as select 43 as answer");
            long first = database.pid();
            ProcessHandle.of(first).orElseThrow().destroyForcibly();
            await().atMost(Duration.ofSeconds(60)).ignoreExceptions().untilAsserted(() -> assertThat(
                            ask(database, "select answer from kept"))
                    .isEqualTo("43"));
            assertThat(database.pid()).isNotEqualTo(first);
        }
    }

    @Test
    void aPidFileWhoseNumberWentToAnotherProgramIsNoHindrance() throws Exception {
        EmbeddedDatabase.start(data, 0).close();
        Files.writeString(
                data.path().resolve("postgres/postmaster.pid"),
                ProcessHandle.current().pid() + "\n" + data.path().resolve("postgres") + "\n");
        try (EmbeddedDatabase database = EmbeddedDatabase.start(data, 0)) {
            assertThat(ask(database, "select 1")).isEqualTo("1");
        }
    }

    @Test
    void aFirstStartThatWasCutShortIsDoneOver() throws Exception {
        Files.createDirectories(data.path().resolve("postgres.new/base"));
        Files.writeString(data.path().resolve("postgres.new/PG_VERSION"), "18\n");
        try (EmbeddedDatabase database = EmbeddedDatabase.start(data, 0)) {
            assertThat(ask(database, "select 1")).isEqualTo("1");
        }
        assertThat(data.path().resolve("postgres.new")).doesNotExist();
    }

    @Test
    void filesOfAnotherMajorVersionAreRefusedWithTheMend() throws Exception {
        Files.createDirectories(data.path().resolve("postgres"));
        Files.writeString(data.path().resolve("postgres/PG_VERSION"), "14\n");
        assertThatThrownBy(() -> EmbeddedDatabase.start(data, 0))
                .isInstanceOf(SetupException.class)
                .hasMessageContaining("made by PostgreSQL 14, this program brings 18");
    }

    @Test
    void aWishedPortThatIsInUseIsNamed() throws Exception {
        try (var socket = new java.net.ServerSocket(0, 1, java.net.InetAddress.getLoopbackAddress())) {
            int port = socket.getLocalPort();
            assertThatThrownBy(() -> EmbeddedDatabase.start(data, port))
                    .isInstanceOf(SetupException.class)
                    .hasMessageContaining("port " + port + " on 127.0.0.1 is in use")
                    .hasMessageContaining("roundsman.database.embedded-port");
        }
    }

    private static String ask(EmbeddedDatabase database, String query) throws SQLException {
        try (Connection connection = connect(database);
                var rows = connection.createStatement().executeQuery(query)) {
            rows.next();
            return rows.getString(1);
        }
    }

    private static void tell(EmbeddedDatabase database, String statement) throws SQLException {
        try (Connection connection = connect(database)) {
            connection.createStatement().execute(statement);
        }
    }

    private static Connection connect(EmbeddedDatabase database) throws SQLException {
        DatabaseAddress address = database.address();
        return DriverManager.getConnection(address.url(), address.user(), address.password());
    }

    private static boolean takesConnections(String host, int port) throws java.io.IOException {
        try (Socket socket = new Socket()) {
            socket.connect(new InetSocketAddress(host, port), 1_000);
            return true;
        } catch (java.net.ConnectException e) {
            return false;
        }
    }

    private String permissions(String name) throws java.io.IOException {
        return PosixFilePermissions.toString(Files.getPosixFilePermissions(folder.resolve(name)));
    }
}
