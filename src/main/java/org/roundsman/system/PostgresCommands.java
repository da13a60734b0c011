package org.roundsman.system;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.roundsman.system.SetupException.Fault;

/**
 * Runs the programs of a PostgreSQL installation. They refuse to run as root; root runs them in a user namespace of their
 * own, in which they see an ordinary user.
 */
final class PostgresCommands {

    private static final long WAIT_SECONDS = 600;

    private final Path home;
    private final List<String> asOrdinaryUser;

    PostgresCommands(Path home) throws IOException {
        this.home = home;
        this.asOrdinaryUser = isRoot() ? List.of("unshare", "-U") : List.of();
        if (isRoot() && !runs(List.of("unshare", "-U", "true"))) {
            throw new SetupException(
                    Fault.DATABASE,
                    "PostgreSQL does not run as root, and this machine does not let root step into a user namespace "
                            + "(unshare -U). Start the service as an ordinary user, or name an external PostgreSQL with "
                            + "roundsman.database.url.");
        }
    }

    /** Runs it to its end. */
    void run(String program, String... arguments) throws IOException {
        Path output = Files.createTempFile("postgres", ".out");
        try {
            Process process = builder(List.of(), program, List.of(arguments))
                    .redirectOutput(output.toFile())
                    .start();
            if (!ended(process) || process.exitValue() != 0) {
                throw new IOException(
                        program + " failed: " + Files.readString(output).strip());
            }
        } finally {
            Files.delete(output);
        }
    }

    /** Starts it as a process of its own session: a Ctrl-C in our terminal must not reach it before we are done. */
    Process start(File output, String program, List<String> arguments) throws IOException {
        List<String> ownSession = runs(List.of("setsid", "true")) ? List.of("setsid") : List.of();
        return builder(ownSession, program, arguments).redirectOutput(output).start();
    }

    private ProcessBuilder builder(List<String> ownSession, String program, List<String> arguments) {
        List<String> command = new ArrayList<>(ownSession);
        command.addAll(asOrdinaryUser);
        command.add(home.resolve("bin").resolve(program).toString());
        command.addAll(arguments);
        ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true);
        builder.environment().keySet().removeIf(name -> name.startsWith("PG") || name.startsWith("LC_"));
        builder.environment().put("LC_ALL", "C");
        return builder;
    }

    private static boolean isRoot() {
        return "root".equals(System.getProperty("user.name"));
    }

    private static boolean runs(List<String> command) {
        try {
            Process process = new ProcessBuilder(command)
                    .redirectErrorStream(true)
                    .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                    .start();
            return ended(process) && process.exitValue() == 0;
        } catch (IOException e) {
            return false; // no such program
        }
    }

    private static boolean ended(Process process) throws IOException {
        try {
            return process.waitFor(WAIT_SECONDS, TimeUnit.SECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IOException("interrupted while waiting for process " + process.pid(), e);
        }
    }
}
