package org.roundsman.system;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;

/** One run of the PostgreSQL server: from its start until it ends. */
final class PostgresServer {

    private static final long BETWEEN_TRIES_MS = 100;
    private static final int MOST_TRIES = 6_000; // ten minutes: recovery after a crash reads the whole write-ahead log

    private final Process process;
    private final Path output;

    private PostgresServer(Process process, Path output) {
        this.process = process;
        this.output = output;
    }

    /** Starts it and comes back at once; see {@link #awaitReady}. */
    static PostgresServer start(PostgresCommands commands, PostgresFolder folder, int port) throws IOException {
        Path output = folder.path().resolveSibling("postgres-start.log");
        List<String> arguments = new ArrayList<>(List.of("-D", folder.path().toString()));
        settings(port).forEach((name, value) -> arguments.addAll(List.of("-c", name + "=" + value)));
        return new PostgresServer(commands.start(output.toFile(), "postgres", arguments), output);
    }

    private static Map<String, String> settings(int port) {
        Map<String, String> settings = new TreeMap<>();
        settings.put("listen_addresses", "127.0.0.1");
        settings.put("port", Integer.toString(port));
        settings.put("unix_socket_directories", "");
        settings.put("max_connections", "50");
        settings.put("superuser_reserved_connections", "3");
        // What is committed is on disk. Said aloud, since nothing else in this program may turn it off.
        settings.put("fsync", "on");
        settings.put("synchronous_commit", "on");
        settings.put("full_page_writes", "on");
        settings.put("shared_buffers", "256MB");
        settings.put("max_wal_size", "2GB");
        settings.put("timezone", "UTC");
        settings.put("log_timezone", "UTC");
        // One log file per weekday, overwritten a week later: bounded without anybody's care.
        settings.put("logging_collector", "on");
        settings.put("log_directory", "log");
        settings.put("log_filename", "postgres-%a.log");
        settings.put("log_rotation_age", "1d");
        settings.put("log_truncate_on_rotation", "on");
        return settings;
    }

    long pid() {
        return process.pid();
    }

    boolean isAlive() {
        return process.isAlive();
    }

    /** Waits until the server is gone. */
    void awaitEnd() throws InterruptedException {
        process.waitFor();
    }

    /** Waits until it takes connections. */
    void awaitReady(DatabaseAddress address) throws IOException, InterruptedException {
        SQLException last = null;
        for (int i = 0; i < MOST_TRIES; i++) {
            try (Connection connection =
                    DriverManager.getConnection(address.url(), address.user(), address.password())) {
                connection.isValid(0);
                return;
            } catch (SQLException e) {
                last = e;
            }
            if (process.waitFor(BETWEEN_TRIES_MS, TimeUnit.MILLISECONDS)) {
                throw new IOException("the database server ended while it started: " + lastWords());
            }
        }
        process.destroy();
        throw new IOException("the database server does not take connections: " + lastWords(), last);
    }

    private String lastWords() throws IOException {
        return new String(Files.readAllBytes(output), StandardCharsets.UTF_8).strip();
    }
}
