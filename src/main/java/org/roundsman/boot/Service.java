package org.roundsman.boot;

import io.quarkus.runtime.Quarkus;
import java.io.IOException;
import java.net.InetSocketAddress;
import java.net.ServerSocket;
import java.time.Clock;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import org.roundsman.fleet.KeyRotation;
import org.roundsman.system.DataFolder;
import org.roundsman.system.DatabaseAddress;
import org.roundsman.system.EmbeddedDatabase;
import org.roundsman.system.ExternalDatabase;
import org.roundsman.system.SetupException;
import org.roundsman.system.SetupException.Fault;

/**
 * The service from start to end, in the order that keeps data whole: claim the folder, start the database, run the
 * container, and only when that has stopped, however it was asked to, stop the database.
 */
final class Service {

    private static final long LONGEST_STOP_SECONDS = 150;

    private final StartSettings settings;
    private final Clock clock;
    private final CountDownLatch ended = new CountDownLatch(1);
    private volatile boolean stopping;

    Service(StartSettings settings, Clock clock) {
        this.settings = settings;
        this.clock = clock;
    }

    /** Runs until it is told to stop; gives the exit status. */
    int run() {
        requireFreePort();
        DataFolder data = DataFolder.at(settings.dataFolder());
        try (AutoCloseable claim = data.claim()) {
            Runtime.getRuntime().addShutdownHook(new Thread(this::awaitEnd, "await-end"));
            System.setProperty("roundsman.data-folder", data.path().toString());
            return onDatabase(data);
        } catch (SetupException e) {
            throw e;
        } catch (Exception e) {
            throw new IllegalStateException("the claim on " + data.path() + " cannot be given back", e);
        } finally {
            ended.countDown();
        }
    }

    private int onDatabase(DataFolder data) {
        if (settings.database().url().isPresent()) {
            return container(data, ExternalDatabase.reach(settings.database()));
        }
        try (EmbeddedDatabase database =
                EmbeddedDatabase.start(data, settings.database().embeddedPort())) {
            return container(data, database.address());
        }
    }

    private int container(DataFolder data, DatabaseAddress address) {
        KeyRotation.of(data, address, clock).finish();
        System.setProperty("quarkus.datasource.jdbc.url", address.url());
        System.setProperty("quarkus.datasource.username", address.user());
        System.setProperty("quarkus.datasource.password", address.password());
        AtomicInteger status = new AtomicInteger();
        if (!stopping) {
            // The handler takes the place of Quarkus's own, which would end the process before the database has
            // stopped.
            Quarkus.run(null, (code, failure) -> {
                status.set(code);
                Main.sayWhy(failure);
            });
        }
        return status.get();
    }

    /** Keeps the process alive after SIGTERM or SIGINT until everything has stopped. */
    private void awaitEnd() {
        stopping = true;
        try {
            if (!ended.await(LONGEST_STOP_SECONDS, TimeUnit.SECONDS)) {
                Main.say("Stopping takes longer than " + LONGEST_STOP_SECONDS + " s; giving up.");
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private void requireFreePort() {
        try (ServerSocket socket = new ServerSocket()) {
            socket.bind(new InetSocketAddress(settings.host(), settings.port()));
        } catch (IOException | IllegalArgumentException e) {
            throw new SetupException(
                    Fault.PORT_IN_USE,
                    "Port " + settings.port() + " on " + settings.host() + " cannot be used: " + e.getMessage()
                            + ". Stop the program that has it, or choose another one with --port (and --host).",
                    e);
        }
    }
}
