package org.roundsman.system;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.DriverManager;
import java.util.Optional;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Against a database that asks for a password: our own embedded one, seen from outside. */
class ExternalDatabaseDbTest {

    @TempDir
    static Path folder;

    private static EmbeddedDatabase server;

    @BeforeAll
    static void start() {
        server = EmbeddedDatabase.start(DataFolder.at(folder.resolve("data")), 0);
    }

    @AfterAll
    static void stop() {
        server.close();
    }

    @Test
    void aDatabaseThatTakesUsIsReachedWithThePasswordFromItsFile() throws Exception {
        Path file =
                Files.writeString(folder.resolve("password"), server.address().password() + "\n");
        DatabaseAddress address =
                ExternalDatabase.reach(new Settings(server.address().url(), "", file));
        try (var connection = DriverManager.getConnection(address.url(), address.user(), address.password())) {
            assertThat(connection.isValid(5)).isTrue();
        }
        assertThat(address.toString()).doesNotContain(address.password());
    }

    @Test
    void aWrongPasswordIsSaidWithUserAndPlaceAndMend() {
        assertThatThrownBy(() ->
                        ExternalDatabase.reach(new Settings(server.address().url(), "wrong", null)))
                .isInstanceOf(SetupException.class)
                .hasMessageContaining("127.0.0.1, port " + server.port() + ", database roundsman")
                .hasMessageContaining("as user roundsman")
                .hasMessageContaining("Check roundsman.database.user and its password");
    }

    @Test
    void aMissingDatabaseIsSaidWithItsName() {
        String url = server.address().url().replaceFirst("/roundsman$", "/attic");
        assertThatThrownBy(() -> ExternalDatabase.reach(
                        new Settings(url, server.address().password(), null)))
                .isInstanceOf(SetupException.class)
                .hasMessageContaining("database attic")
                .hasMessageContaining("Create the database");
    }

    @Test
    void aNameThatDoesNotResolveAndAnAddressThatIsNoneAreSaid() {
        assertThatThrownBy(() ->
                        ExternalDatabase.reach(new Settings("jdbc:postgresql://nowhere.invalid/ledger", "", null)))
                .isInstanceOf(SetupException.class)
                .hasMessageContaining("nowhere.invalid, port 5432, database ledger")
                .hasMessageContaining("Check that PostgreSQL runs there");
        assertThatThrownBy(() -> ExternalDatabase.reach(new Settings("db.example:5432", "", null)))
                .hasMessageContaining("must look like jdbc:postgresql://host:5432/roundsman");
    }

    @Test
    void aMissingPasswordFileIsNamedWithItsKey() {
        Path missing = folder.resolve("missing");
        assertThatThrownBy(() ->
                        ExternalDatabase.reach(new Settings(server.address().url(), "", missing)))
                .isInstanceOf(SetupException.class)
                .hasMessageContaining(missing.toString())
                .hasMessageContaining("roundsman.database.password-file");
    }

    private record Settings(String address, String secret, Path file) implements DatabaseSettings {
        @Override
        public Optional<String> url() {
            return Optional.of(address);
        }

        @Override
        public String user() {
            return "roundsman";
        }

        @Override
        public Optional<String> password() {
            return Optional.of(secret);
        }

        @Override
        public Optional<Path> passwordFile() {
            return Optional.ofNullable(file);
        }

        @Override
        public int embeddedPort() {
            return 0;
        }
    }
}
