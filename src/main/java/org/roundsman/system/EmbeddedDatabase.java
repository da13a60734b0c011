package org.roundsman.system;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.HexFormat;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.jboss.logging.Logger;
import org.roundsman.system.SetupException.Fault;

/**
 * A real PostgreSQL 18 as a child process, its files in the data folder, listening on 127.0.0.1 only and asking for a
 * password. Should the server die while we run, it is started again on the same port. The caller decides when it ends:
 * there is no shutdown hook in here. Thread-safe.
 */
public final class EmbeddedDatabase implements AutoCloseable {

    private static final Logger LOG = Logger.getLogger(EmbeddedDatabase.class);
    private static final String NAME = "roundsman";
    private static final int PASSWORD_BYTES = 24;
    private static final long FIRST_PAUSE_MS = 250;
    private static final long LONGEST_PAUSE_MS = 10_000;

    private final PostgresCommands commands;
    private final PostgresFolder folder;
    private final int port;
    private final String password;
    private final CountDownLatch closing = new CountDownLatch(1);
    private final Thread watch = new Thread(this::watch, "database-watch");
    private PostgresServer server;

    private EmbeddedDatabase(PostgresCommands commands, PostgresFolder folder, int port, String password) {
        this.commands = commands;
        this.folder = folder;
        this.port = port;
        this.password = password;
    }

    /**
     * Starts it and waits until it takes connections, after a crash until recovery is done.
     *
     * @param data the data folder, which the caller has claimed
     * @param wishedPort TCP port, or 0 for the one of last time, or else a free one
     * @throws SetupException when it cannot be started
     */
    public static EmbeddedDatabase start(DataFolder data, int wishedPort) {
        try {
            Path passwordFile = data.path().resolve("database.password");
            PrivateFiles.createOnce(passwordFile, randomPassword() + "\n");
            PostgresCommands commands = new PostgresCommands(PostgresBinaries.below(data.folder("postgres-programs")));
            PostgresFolder folder = new PostgresFolder(data.path().resolve("postgres"), commands);
            folder.ensure(passwordFile);
            folder.clearLeftovers();
            int port = LoopbackPort.choose(data.path().resolve("postgres.port"), wishedPort);
            String password =
                    Files.readString(passwordFile, StandardCharsets.US_ASCII).strip();
            EmbeddedDatabase database = new EmbeddedDatabase(commands, folder, port, password);
            database.beginOrStop();
            return database;
        } catch (IOException | SQLException e) {
            throw new SetupException(
                    Fault.DATABASE,
                    "The embedded database in " + data.path() + " does not start: " + e.getMessage()
                            + ". Its log is in postgres/log there.",
                    e);
        }
    }

    /** How the service signs in: as an ordinary role that owns its database, not as the superuser. */
    public DatabaseAddress address() {
        return new DatabaseAddress(url(NAME), NAME, password);
    }

    /** TCP port on 127.0.0.1. */
    public int port() {
        return port;
    }

    /** Process id of the server as it is now. */
    public synchronized long pid() {
        return server.pid();
    }

    private String url(String database) {
        return "jdbc:postgresql://127.0.0.1:" + port + "/" + database;
    }

    private void beginOrStop() throws IOException, SQLException {
        try {
            begin();
        } catch (IOException | SQLException | RuntimeException e) {
            close();
            throw e;
        }
    }

    private void begin() throws IOException, SQLException {
        DatabaseAddress superuser = new DatabaseAddress(url("postgres"), PostgresFolder.SUPERUSER, password);
        try {
            launch(superuser);
            createRoleAndDatabase(superuser);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IOException("interrupted while the database started", e);
        }
        watch.setDaemon(true);
        watch.start();
    }

    private synchronized void launch(DatabaseAddress address) throws IOException, InterruptedException {
        server = PostgresServer.start(commands, folder, port);
        server.awaitReady(address);
    }

    private void createRoleAndDatabase(DatabaseAddress superuser) throws SQLException {
        try (Connection connection =
                        DriverManager.getConnection(superuser.url(), superuser.user(), superuser.password());
                Statement statement = connection.createStatement()) {
            if (!any(statement, "select from pg_roles where rolname = '" + NAME + "'")) {
                // hexadecimal digits only: nothing to quote
                statement.execute("create role " + NAME + " login password '" + password + "'");
            }
            if (!any(statement, "select from pg_database where datname = '" + NAME + "'")) {
                statement.execute("create database " + NAME + " owner " + NAME);
            }
        }
    }

    private static boolean any(Statement statement, String query) throws SQLException {
        try (ResultSet rows = statement.executeQuery(query)) {
            return rows.next();
        }
    }

    private void watch() {
        try {
            while (isWanted()) {
                current().awaitEnd();
                if (isWanted()) {
                    LOG.warnf("The database server has died; starting it again on port %d", port);
                    relaunch();
                }
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private void relaunch() throws InterruptedException {
        long pause = FIRST_PAUSE_MS;
        while (!closing.await(pause, TimeUnit.MILLISECONDS)) {
            try {
                folder.clearLeftovers();
                launch(address());
                LOG.infof("The database server is back on port %d", port);
                return;
            } catch (IOException e) {
                pause = Math.min(LONGEST_PAUSE_MS, pause * 2);
                LOG.warnf("Next try in %d ms: %s", pause, e.getMessage());
            }
        }
    }

    private boolean isWanted() {
        return closing.getCount() > 0;
    }

    private synchronized PostgresServer current() {
        return server;
    }

    /** Ends the server in good order; what is committed stays. Further calls do nothing. */
    @Override
    public void close() {
        if (!isWanted()) {
            return;
        }
        closing.countDown();
        try {
            stop();
            watch.join();
        } catch (IOException e) {
            LOG.errorf(e, "The database server on %s could not be stopped", folder.path());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private synchronized void stop() throws IOException {
        if (server != null && server.isAlive()) {
            folder.stop();
        }
    }

    private static String randomPassword() {
        byte[] bytes = new byte[PASSWORD_BYTES];
        new SecureRandom().nextBytes(bytes);
        return HexFormat.of().formatHex(bytes);
    }
}
