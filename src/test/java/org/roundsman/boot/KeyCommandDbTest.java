package org.roundsman.boot;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.time.Clock;
import java.util.Optional;
import org.flywaydb.core.Flyway;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.roundsman.system.Claim;
import org.roundsman.system.DataFolder;
import org.roundsman.system.DatabaseAddress;
import org.roundsman.system.DatabaseSettings;
import org.roundsman.system.EmbeddedDatabase;
import org.roundsman.system.SecretKey;
import org.roundsman.system.SetupException;
import org.roundsman.testing.TestDatabase;

/** The command around the change of the key, with the program's own PostgreSQL and with one that somebody else runs. */
class KeyCommandDbTest {

    @TempDir
    Path parent;

    @Test
    void withTheEmbeddedDatabaseItStartsAndStopsIt() throws Exception {
        DataFolder data = DataFolder.at(parent.resolve("data"));
        String before = SecretKey.in(data.keyFile()).idText();
        try (EmbeddedDatabase database = EmbeddedDatabase.start(data, 0)) {
            DatabaseAddress address = database.address();
            Flyway.configure()
                    .dataSource(address.url(), address.user(), address.password())
                    .load()
                    .migrate();
        }
        assertThat(command(data, Optional.empty()).run()).isZero();
        assertThat(SecretKey.in(data.keyFile()).idText()).isNotEqualTo(before);
        assertThat(Files.exists(data.path().resolve("postgres/postmaster.pid"))).isFalse();
        try (EmbeddedDatabase database = EmbeddedDatabase.start(data, 0)) {
            assertThat(entries(database.address())).isEqualTo(1);
        }
    }

    @Test
    void withADatabaseOfSomebodyElse() throws Exception {
        DataFolder data = DataFolder.at(parent.resolve("data"));
        String before = SecretKey.in(data.keyFile()).idText();
        String url;
        try (Connection connection = TestDatabase.fresh("key_command").getConnection()) {
            url = connection.getMetaData().getURL();
        }
        assertThat(command(data, Optional.of(url)).run()).isZero();
        assertThat(SecretKey.in(data.keyFile()).idText()).isNotEqualTo(before);
        assertThat(entries(new DatabaseAddress(url, "postgres", "postgres"))).isEqualTo(1);
    }

    @Test
    void whileTheServiceRunsItSaysWhatToDo() {
        DataFolder data = DataFolder.at(parent.resolve("data"));
        String before = SecretKey.in(data.keyFile()).idText();
        try (Claim service = data.claim()) {
            assertThat(service).isNotNull();
            assertThat(catchThrowableOfType(SetupException.class, () -> command(data, Optional.empty())
                            .run()))
                    .hasMessageContaining("Stop it")
                    .hasMessageContaining("run this again")
                    .extracting(SetupException::fault)
                    .isEqualTo(SetupException.Fault.ALREADY_RUNNING);
        }
        assertThat(SecretKey.in(data.keyFile()).idText()).isEqualTo(before);
    }

    private static KeyCommand command(DataFolder data, Optional<String> url) {
        return new KeyCommand(new StartSettings(data.path(), "127.0.0.1", 0, settings(url)), Clock.systemUTC());
    }

    private static long entries(DatabaseAddress address) throws Exception {
        try (Connection connection = DriverManager.getConnection(address.url(), address.user(), address.password());
                var rows = connection
                        .createStatement()
                        .executeQuery("select count(*) from audit_entry where subject = 'key of secrets'")) {
            rows.next();
            return rows.getLong(1);
        }
    }

    private static DatabaseSettings settings(Optional<String> url) {
        return new DatabaseSettings() {
            @Override
            public Optional<String> url() {
                return url;
            }

            @Override
            public String user() {
                return "postgres";
            }

            @Override
            public Optional<String> password() {
                return Optional.of("postgres");
            }

            @Override
            public Optional<Path> passwordFile() {
                return Optional.empty();
            }

            @Override
            public int embeddedPort() {
                return 0;
            }
        };
    }
}
