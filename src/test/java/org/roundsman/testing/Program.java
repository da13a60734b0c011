package org.roundsman.testing;

import static org.awaitility.Awaitility.await;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;

/** The packaged program as a process of its own, as an operator starts it. */
public final class Program implements AutoCloseable {

    private static final Duration LONGEST_START = Duration.ofSeconds(180);
    private static final long LONGEST_STOP_SECONDS = 180;

    private final Process process;
    private final Path output;
    private final int port;

    private Program(Process process, Path output, int port) {
        this.process = process;
        this.output = output;
        this.port = port;
    }

    /** Starts the package on this folder and port and comes back at once. */
    public static Program start(Path dataFolder, int port, String... options) {
        try {
            Path output = Files.createTempFile(dataFolder.getParent(), "program", ".log");
            List<String> command = new ArrayList<>(List.of(
                    Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                    "-jar",
                    System.getProperty("roundsman.package"),
                    "--data-folder=" + dataFolder,
                    "--port=" + port));
            command.addAll(List.of(options));
            ProcessBuilder builder =
                    new ProcessBuilder(command).redirectErrorStream(true).redirectOutput(output.toFile());
            return new Program(builder.start(), output, port);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** A TCP port that nobody on loopback has at the moment. */
    public static int freePort() {
        try (ServerSocket socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            return socket.getLocalPort();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Waits until the readiness check says UP. */
    public Program awaitReady() {
        await().atMost(LONGEST_START).failFast(this::requireAlive).until(() -> readiness() == 200);
        return this;
    }

    private void requireAlive() {
        if (!process.isAlive()) {
            throw new IllegalStateException("ended with " + process.exitValue() + ":\n" + output());
        }
    }

    private int readiness() throws InterruptedException {
        var request = HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port + "/q/health/ready"))
                .timeout(Duration.ofSeconds(5))
                .build();
        try {
            return HttpClient.newHttpClient()
                    .send(request, HttpResponse.BodyHandlers.discarding())
                    .statusCode();
        } catch (IOException e) {
            return 0; // nobody listens yet
        }
    }

    public long pid() {
        return process.pid();
    }

    /** Asks it to stop (SIGTERM) and waits for its end. */
    public int terminate() {
        process.destroy();
        return awaitEnd();
    }

    /** Ends it without a chance to do anything (SIGKILL). */
    public void kill() {
        process.destroyForcibly();
        awaitEnd();
    }

    /** Waits until it has ended; its exit status. */
    public int awaitEnd() {
        try {
            if (!process.waitFor(LONGEST_STOP_SECONDS, TimeUnit.SECONDS)) {
                throw new IllegalStateException("still running:\n" + output());
            }
            return process.exitValue();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }

    /** All that it has said so far. */
    public String output() {
        try {
            return Files.readString(output);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Override
    public void close() {
        if (process.isAlive()) {
            terminate();
        }
    }
}
