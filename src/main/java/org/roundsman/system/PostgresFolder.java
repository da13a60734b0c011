package org.roundsman.system;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.jboss.logging.Logger;
import org.roundsman.system.SetupException.Fault;

/** The folder in which PostgreSQL keeps its files: makes it, and clears what a process that was killed left behind. */
final class PostgresFolder {

    static final String SUPERUSER = "postgres";

    private static final Logger LOG = Logger.getLogger(PostgresFolder.class);
    private static final String MAJOR_VERSION = "18";

    private final Path path;
    private final PostgresCommands commands;

    PostgresFolder(Path path, PostgresCommands commands) {
        this.path = path;
        this.commands = commands;
    }

    Path path() {
        return path;
    }

    /** Runs initdb where it has not run to its end yet; passwords are asked from the first connection on. */
    void ensure(Path passwordFile) throws IOException {
        if (Files.exists(path.resolve("PG_VERSION"))) {
            requireOurVersion();
            return;
        }
        Path draft = path.resolveSibling(path.getFileName() + ".new");
        delete(draft); // of a start that was killed half-way
        commands.run(
                "initdb",
                "--pgdata=" + draft,
                "--username=" + SUPERUSER,
                "--pwfile=" + passwordFile,
                "--auth=scram-sha-256",
                "--encoding=UTF8",
                "--locale=C",
                "--locale-provider=builtin",
                "--builtin-locale=C.UTF-8");
        Files.move(draft, path, StandardCopyOption.ATOMIC_MOVE);
    }

    private void requireOurVersion() throws IOException {
        String version = Files.readString(path.resolve("PG_VERSION")).strip();
        if (!version.equals(MAJOR_VERSION)) {
            throw new SetupException(
                    Fault.DATABASE,
                    "The database in " + path + " was made by PostgreSQL " + version + ", this program brings "
                            + MAJOR_VERSION + ". Restore a backup into a new data folder; see docs/operations.md.");
        }
    }

    /** After a kill of our process its database lives on: ends it in good order, so that this start has the folder. */
    void clearLeftovers() throws IOException {
        Optional<Long> pid = postmaster();
        if (pid.isEmpty()) {
            return;
        }
        Optional<ProcessHandle> process = ProcessHandle.of(pid.get()).filter(ProcessHandle::isAlive);
        if (process.filter(this::servesThisFolder).isPresent()) {
            LOG.infof("A database process (%d) of an earlier start still runs on %s; ending it first", pid.get(), path);
            stop();
        } else if (process.isPresent()) {
            // The number went to some other program meanwhile, which PostgreSQL would mistake for its own process.
            LOG.infof("Removing a left-over %s", pidFile());
            Files.delete(pidFile());
        }
        // No such process at all: PostgreSQL sees that by itself, and checks for stray children too.
    }

    /** Ends the server of this folder: open transactions are rolled back, what is committed is on disk. */
    void stop() throws IOException {
        commands.run("pg_ctl", "--pgdata=" + path, "--mode=fast", "--wait", "--timeout=120", "stop");
    }

    private Path pidFile() {
        return path.resolve("postmaster.pid");
    }

    private Optional<Long> postmaster() throws IOException {
        try {
            List<String> lines = Files.readAllLines(pidFile(), StandardCharsets.UTF_8);
            return lines.stream()
                    .limit(1)
                    .map(String::strip)
                    .filter(line -> line.matches("\\d{1,18}"))
                    .map(Long::valueOf)
                    .findFirst();
        } catch (NoSuchFileException e) {
            return Optional.empty();
        }
    }

    private boolean servesThisFolder(ProcessHandle process) {
        boolean postgres =
                process.info().command().filter(c -> c.endsWith("/postgres")).isPresent();
        return postgres
                && process.info()
                        .arguments()
                        .filter(a -> Arrays.asList(a).contains(path.toString()))
                        .isPresent();
    }

    private static void delete(Path folder) throws IOException {
        if (Files.notExists(folder)) {
            return;
        }
        try (Stream<Path> files = Files.walk(folder)) {
            for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(file);
            }
        }
    }
}
