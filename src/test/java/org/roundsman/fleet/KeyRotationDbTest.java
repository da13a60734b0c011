package org.roundsman.fleet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Clock;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import java.util.stream.IntStream;
import javax.sql.DataSource;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.roundsman.fleet.CredentialSeals.Field;
import org.roundsman.system.DataFolder;
import org.roundsman.system.DatabaseAddress;
import org.roundsman.system.SealException;
import org.roundsman.system.Sealer;
import org.roundsman.system.SecretKey;
import org.roundsman.system.SetupException;
import org.roundsman.testing.TestDatabase;

/** No secret is lost, whenever the change of the key is cut short: a real process is killed (SIGKILL) at each moment. */
class KeyRotationDbTest {

    private static final int MANY = 40;

    @TempDir
    Path parent;

    private DataFolder folder;
    private DataSource database;
    private DatabaseAddress address;
    private String firstKey;

    @BeforeEach
    void secretsUnderAFirstKey() throws SQLException, IOException {
        folder = DataFolder.at(parent.resolve("data"));
        database = TestDatabase.fresh("rotation");
        try (Connection connection = database.getConnection()) {
            address = new DatabaseAddress(connection.getMetaData().getURL(), "postgres", "postgres");
            SecretKey key = SecretKey.in(folder.keyFile());
            firstKey = key.idText();
            CredentialSeals seals = new CredentialSeals(new Sealer(key));
            for (long id = 1; id <= MANY; id++) {
                insert(connection, id, seals);
            }
        }
    }

    private static void insert(Connection connection, long id, CredentialSeals seals) throws SQLException {
        boolean user = id % 2 == 0;
        try (PreparedStatement insert = connection.prepareStatement(
                "insert into credential (id, name, version, user_name, level, community, auth_secret, priv_secret)"
                        + " values (?, ?, ?, ?, ?, ?, ?, ?)")) {
            insert.setLong(1, id);
            insert.setString(2, "keys " + id);
            insert.setInt(3, user ? 3 : 2);
            insert.setString(4, user ? "rounds" : "");
            insert.setString(5, user ? "AUTH_PRIV" : "NO_AUTH");
            insert.setBytes(6, user ? null : seals.seal(id, Field.COMMUNITY, secret(id, Field.COMMUNITY)));
            insert.setBytes(7, user ? seals.seal(id, Field.AUTH, secret(id, Field.AUTH)) : null);
            insert.setBytes(8, user ? seals.seal(id, Field.PRIV, secret(id, Field.PRIV)) : null);
            insert.executeUpdate();
        }
    }

    private static String secret(long id, Field field) {
        return "secret-" + field.column() + "-" + id;
    }

    private static Map<String, String> expected() {
        Map<String, String> secrets = new TreeMap<>();
        IntStream.rangeClosed(1, MANY)
                .forEach(id -> (id % 2 == 0 ? List.of(Field.AUTH, Field.PRIV) : List.of(Field.COMMUNITY))
                        .forEach(field -> secrets.put(id + " " + field, secret(id, field))));
        return secrets;
    }

    /** What the service opens: with the key in use, and each secret in its place alone. */
    private Map<String, String> opened() throws SQLException {
        CredentialSeals seals = new CredentialSeals(new Sealer(SecretKey.in(folder.keyFile())));
        Map<String, String> secrets = new TreeMap<>();
        try (Connection connection = database.getConnection()) {
            for (SealedSecrets.Secret secret : SealedSecrets.read(connection)) {
                assertThat(seals.inPlace(secret.id(), secret.field(), secret.sealed()))
                        .as(secret.toString())
                        .isTrue();
                secrets.put(
                        secret.id() + " " + secret.field(), seals.open(secret.id(), secret.field(), secret.sealed()));
            }
        }
        return secrets;
    }

    private KeyRotation rotation() {
        return KeyRotation.of(folder, address, Clock.systemUTC());
    }

    @Test
    void everySecretIsSealedUnderTheNewKeyAndTheFormerOneIsKept() throws SQLException, IOException {
        KeyRotation.Done done = rotation().rotate();
        assertThat(done.secrets()).isEqualTo(MANY / 2 * 3);
        assertThat(done.formerKey()).isEqualTo(firstKey);
        assertThat(SecretKey.in(folder.keyFile()).idText())
                .isEqualTo(done.key())
                .isNotEqualTo(firstKey);
        assertThat(SecretKey.in(done.former()).idText()).isEqualTo(firstKey);
        for (Path file : List.of(folder.keyFile(), done.former())) {
            assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(file)))
                    .isEqualTo("rw-------");
        }
        assertThat(opened()).isEqualTo(expected());
        assertThat(audit()).containsExactly("COMMAND changed key of secrets: key " + firstKey + " " + done.key());
        assertThat(rotation().finish()).isEmpty();
        KeyRotation.Done again = rotation().rotate();
        assertThat(again.formerKey()).isEqualTo(done.key());
        assertThat(opened()).isEqualTo(expected());
    }

    @ParameterizedTest
    @EnumSource(KeyRotation.Moment.class)
    void afterAKillTheServiceOpensEverySecret(KeyRotation.Moment moment) throws Exception {
        killAt(moment);
        rotation().finish();
        assertThat(opened()).isEqualTo(expected());
        boolean committed = moment.compareTo(KeyRotation.Moment.COMMITTED) >= 0;
        assertThat(SecretKey.in(folder.keyFile()).idText().equals(firstKey)).isEqualTo(!committed);
        rotation().rotate();
        assertThat(opened()).isEqualTo(expected());
    }

    @ParameterizedTest
    @EnumSource(KeyRotation.Moment.class)
    void afterAKillTheCommandCanBeRunAgainAtOnce(KeyRotation.Moment moment) throws Exception {
        killAt(moment);
        KeyRotation.Done done = rotation().rotate();
        assertThat(SecretKey.in(folder.keyFile()).idText())
                .isEqualTo(done.key())
                .isNotEqualTo(firstKey);
        assertThat(opened()).isEqualTo(expected());
    }

    /** A secret that was entered between a commit and the end that came later, under the key that was still in use. */
    @Test
    void secretsUnderEitherKeyEndUnderTheNewOne() throws Exception {
        killAt(KeyRotation.Moment.COMMITTED);
        CredentialSeals former = new CredentialSeals(new Sealer(SecretKey.in(folder.keyFile())));
        try (Connection connection = database.getConnection();
                PreparedStatement change =
                        connection.prepareStatement("update credential set community = ? where id = 1")) {
            change.setBytes(1, former.seal(1, Field.COMMUNITY, secret(1, Field.COMMUNITY)));
            change.executeUpdate();
        }
        assertThat(rotation().finish())
                .hasValueSatisfying(done -> assertThat(done.secrets()).isEqualTo(1));
        assertThat(opened()).isEqualTo(expected());
    }

    @Test
    void aSecretThatOpensUnderNoKeyStopsTheChangeBeforeAnythingIsChanged() throws Exception {
        SecretKey strange = SecretKey.in(parent.resolve("strange.key"));
        byte[] sealed = new CredentialSeals(new Sealer(strange)).seal(1, Field.COMMUNITY, "lost");
        try (Connection connection = database.getConnection();
                PreparedStatement change =
                        connection.prepareStatement("update credential set community = ? where id = 1")) {
            change.setBytes(1, sealed);
            change.executeUpdate();
        }
        SetupException refused =
                catchThrowableOfType(SetupException.class, () -> rotation().rotate());
        assertThat(refused).hasMessageContaining("not changed").hasMessageContaining("keys 1");
        assertThat(refused.getMessage()).doesNotContain("lost");
        assertThat(rotation().finish()).isEmpty();
        assertThat(SecretKey.in(folder.keyFile()).idText()).isEqualTo(firstKey);
        try (Connection connection = database.getConnection();
                Statement statement = connection.createStatement()) {
            statement.execute("delete from credential where id = 1");
        }
        Map<String, String> others = expected();
        others.remove("1 COMMUNITY");
        assertThat(opened()).isEqualTo(others);
        rotation().rotate();
        assertThat(opened()).isEqualTo(others);
    }

    /** The place is written out here, since it is what notices seal to and this package has to know. */
    @Test
    void theSecretOfAWebhookIsSealedAnewWithTheOthers() throws SQLException {
        byte[] place = "webhook/1/secret".getBytes(java.nio.charset.StandardCharsets.UTF_8);
        byte[] secret = "gong-key".getBytes(java.nio.charset.StandardCharsets.UTF_8);
        Sealer before = new Sealer(SecretKey.in(folder.keyFile()));
        try (Connection connection = database.getConnection();
                Statement statement = connection.createStatement();
                PreparedStatement insert = connection.prepareStatement("insert into notice_webhook"
                        + " (account_id, name, url, secret, created_at, secret_at)"
                        + " values (1, 'chat', 'https://chat.example/', ?, now(), now())")) {
            statement.execute("insert into account (name, role, password_hash) values ('wren', 'OWNER', 'x')");
            insert.setBytes(1, before.seal(secret, place));
            insert.executeUpdate();
        }
        assertThat(rotation().rotate().secrets()).isEqualTo(MANY / 2 * 3 + 1);
        Sealer after = new Sealer(SecretKey.in(folder.keyFile()));
        try (Connection connection = database.getConnection();
                Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery("select secret from notice_webhook")) {
            row.next();
            assertThat(after.open(row.getBytes(1), place)).isEqualTo(secret);
        }
    }

    /** Decision 5 holds after the change as before it. */
    @Test
    void theNewKeyOpensNothingInAnotherPlace() throws SQLException {
        rotation().rotate();
        CredentialSeals seals = new CredentialSeals(new Sealer(SecretKey.in(folder.keyFile())));
        try (Connection connection = database.getConnection()) {
            SealedSecrets.Secret secret = SealedSecrets.read(connection).get(0);
            assertThat(catchThrowableOfType(
                            SealException.class, () -> seals.open(secret.id() + 1, secret.field(), secret.sealed())))
                    .isNotNull();
        }
    }

    /** Whoever adds a column of bytes says here what it is; a sealed one must be sealed anew with the others. */
    @Test
    void everyColumnOfBytesIsKnown() throws SQLException {
        try (Connection connection = database.getConnection();
                Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery("select distinct table_name || '.' || column_name"
                        + " from information_schema.columns where table_schema = 'public' and data_type = 'bytea'"
                        + " and table_name in (select relname from pg_class where not relispartition)")) {
            List<String> columns = new java.util.ArrayList<>();
            while (rows.next()) {
                columns.add(rows.getString(1));
            }
            List<String> sealed = java.util.Arrays.stream(Field.values())
                    .map(field -> field.table() + "." + field.column())
                    .toList();
            assertThat(sealed)
                    .containsExactlyInAnyOrder(
                            "credential.community",
                            "credential.auth_secret",
                            "credential.priv_secret",
                            "notice_webhook.secret");
            assertThat(columns).containsAll(sealed);
            // the key has nothing to do with hashes, files, and what devices and neighbours call themselves
            List<String> open = List.of(
                    "own_engine.engine_id",
                    "wiring_read.chassis_id",
                    "wiring_neighbour.chassis_id",
                    "wiring_neighbour.port_id",
                    "stored_walk.walk",
                    "stored_walk.later",
                    "evidence.content",
                    "evidence.sha256",
                    "calendar_day.digest",
                    "report.figures",
                    "report.pdf",
                    "report_brand.logo");
            assertThat(columns)
                    .filteredOn(c -> !sealed.contains(c) && !open.contains(c))
                    .allMatch(column -> column.endsWith("hash"));
        }
    }

    @Test
    void withoutAKeyFileThereIsNothingToChange() throws IOException {
        Files.delete(folder.keyFile());
        assertThat(catchThrowableOfType(SetupException.class, () -> rotation().rotate()))
                .hasMessageContaining("There is no key file");
        assertThat(folder.keyFile()).doesNotExist();
    }

    private List<String> audit() throws SQLException {
        try (Connection connection = database.getConnection();
                Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery("select via || ' ' || action || ' ' || subject || ': '"
                        + " || (changes->0->>'field') || ' ' || (changes->0->>'old') || ' ' || (changes->0->>'new')"
                        + " from audit_entry order by id")) {
            List<String> entries = new java.util.ArrayList<>();
            while (rows.next()) {
                entries.add(rows.getString(1));
            }
            return entries;
        }
    }

    private void killAt(KeyRotation.Moment moment) throws IOException, InterruptedException {
        Process victim = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-cp",
                        System.getProperty("java.class.path"),
                        KeyRotationVictim.class.getName(),
                        folder.path().toString(),
                        address.url(),
                        moment.name())
                .redirectError(parent.resolve("victim.log").toFile())
                .start();
        try (BufferedReader said = victim.inputReader()) {
            String line = said.readLine();
            assertThat(line).as(() -> "the victim said nothing: " + log()).isEqualTo("AT " + moment);
        } finally {
            victim.destroyForcibly();
            assertThat(victim.waitFor(60, TimeUnit.SECONDS)).isTrue();
        }
        // 128 + 9: SIGKILL
        assertThat(victim.exitValue()).isEqualTo(137);
    }

    private String log() {
        try {
            return Files.readString(parent.resolve("victim.log"));
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }
}
