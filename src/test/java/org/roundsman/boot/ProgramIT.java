package org.roundsman.boot;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.Arrays;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.roundsman.testing.Program;

class ProgramIT {

    @TempDir
    Path parent;

    private Path folder;
    private int port;

    @BeforeEach
    void place() {
        folder = parent.resolve("data");
        port = Program.freePort();
    }

    @Test
    void itStopsItsDatabaseWhenItIsToldToStopAndKeepsTheData() throws Exception {
        try (Program program = Program.start(folder, port).awaitReady()) {
            tell("create table kept as select 42 as answer");
            assertThat(databaseProcess()).isPresent();
            // 128 + 15: what a Java process gives after SIGTERM
            assertThat(program.terminate()).isEqualTo(143);
            assertThat(databaseProcess()).isEmpty();
            assertThat(program.output()).contains("roundsman stopped");
            assertThat(databaseLog()).contains("database system is shut down");
        }
        try (Program program = Program.start(folder, port).awaitReady()) {
            assertThat(ask("select answer from kept")).isEqualTo("42");
            assertThat(program.output()).doesNotContain("earlier start still runs");
        }
    }

    @Test
    void afterAKillTheNextStartRecoversWithEveryCommittedRow() throws Exception {
        Program first = Program.start(folder, port).awaitReady();
        tell("create table kept as select generate_series(1, 10000) as row");
        first.kill();
        assertThat(databaseProcess())
                .as("the database outlives a killed service")
                .isPresent();
        try (Program second = Program.start(folder, port).awaitReady()) {
            assertThat(ask("select count(*) from kept")).isEqualTo("10000");
            assertThat(second.output()).contains("earlier start still runs");
        }
        assertThat(databaseProcess()).isEmpty();
    }

    @Test
    void afterAKillOfServiceAndDatabaseTheNextStartRecovers() throws Exception {
        Program first = Program.start(folder, port).awaitReady();
        tell("create table kept as select generate_series(1, 10000) as row");
        ProcessHandle database = databaseProcess().orElseThrow();
        first.kill();
        database.destroyForcibly();
        database.onExit().join();
        try (Program second = Program.start(folder, port).awaitReady()) {
            assertThat(second.pid()).isPositive();
            assertThat(ask("select count(*) from kept")).isEqualTo("10000");
            assertThat(databaseLog()).contains("automatic recovery in progress");
        }
    }

    @Test
    void aPortInUseIsNamedAndNothingIsLeftBehind() throws Exception {
        try (ServerSocket taken = new ServerSocket(port, 1, InetAddress.getLoopbackAddress());
                Program program = Program.start(folder, taken.getLocalPort())) {
            assertThat(program.awaitEnd()).isEqualTo(13);
            assertThat(program.output())
                    .contains("Port " + port + " on 127.0.0.1 cannot be used")
                    .contains("--port");
        }
        assertThat(databaseProcess()).isEmpty();
    }

    @Test
    void aSecondInstanceOnOneFolderIsRefusedAndTheFirstGoesOn() throws Exception {
        try (Program first = Program.start(folder, port).awaitReady();
                Program second = Program.start(folder, Program.freePort())) {
            assertThat(second.awaitEnd()).isEqualTo(12);
            assertThat(second.output()).contains("Another instance (process " + first.pid() + ")");
            assertThat(ask("select 1")).isEqualTo("1");
        }
    }

    @Test
    void anExternalDatabaseThatCannotBeReachedIsNamedWithHostPortAndDatabase() throws Exception {
        Path settings = Files.writeString(
                parent.resolve("roundsman.properties"),
                "roundsman.database.url=jdbc:postgresql://127.0.0.1:" + Program.freePort() + "/ledger\n");
        try (Program program = Program.start(folder, port, "--config=" + settings)) {
            assertThat(program.awaitEnd()).isEqualTo(14);
            assertThat(program.output()).contains("The database at 127.0.0.1, port ", ", database ledger cannot be");
        }
        assertThat(folder.resolve("postgres")).doesNotExist();
    }

    private Optional<ProcessHandle> databaseProcess() {
        String place = folder.resolve("postgres").toString();
        return ProcessHandle.allProcesses()
                .filter(process -> process.info()
                        .arguments()
                        .filter(arguments -> Arrays.asList(arguments).contains(place))
                        .isPresent())
                .findFirst();
    }

    private String databaseLog() throws Exception {
        StringBuilder text = new StringBuilder();
        try (var files = Files.list(folder.resolve("postgres/log"))) {
            for (Path file : files.toList()) {
                text.append(Files.readString(file));
            }
        }
        return text.toString();
    }

    private String ask(String query) throws Exception {
        try (Connection connection = connect();
                var rows = connection.createStatement().executeQuery(query)) {
            rows.next();
            return rows.getString(1);
        }
    }

    private void tell(String statement) throws Exception {
        try (Connection connection = connect()) {
            connection.createStatement().execute(statement);
        }
    }

    private Connection connect() throws SQLException, java.io.IOException {
        String number = Files.readString(folder.resolve("postgres.port")).strip();
        String password = Files.readString(folder.resolve("database.password")).strip();
        return DriverManager.getConnection(
                "jdbc:postgresql://127.0.0.1:" + number + "/roundsman", "roundsman", password);
    }
}
