package org.roundsman.boot;

import java.time.Clock;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.roundsman.fleet.KeyRotation;
import org.roundsman.system.DataFolder;
import org.roundsman.system.DatabaseAddress;
import org.roundsman.system.EmbeddedDatabase;
import org.roundsman.system.ExternalDatabase;
import org.roundsman.system.SetupException;
import org.roundsman.system.SetupException.Fault;

/** The command that changes the key of secrets: claims the data folder, so that no service of it runs meanwhile. */
final class KeyCommand {

    private static final long LONGEST_STOP_SECONDS = 60;

    private final StartSettings settings;
    private final Clock clock;
    private final CountDownLatch ended = new CountDownLatch(1);

    KeyCommand(StartSettings settings, Clock clock) {
        this.settings = settings;
        this.clock = clock;
    }

    /**
     * Does it; gives the exit status.
     *
     * @throws SetupException saying what keeps it from being done
     */
    int run() {
        DataFolder data = DataFolder.at(settings.dataFolder());
        try (AutoCloseable claim = claim(data)) {
            Runtime.getRuntime().addShutdownHook(new Thread(this::awaitEnd, "await-end"));
            say(rotated(data));
            return 0;
        } catch (RuntimeException e) {
            throw e;
        } catch (Exception e) {
            throw new IllegalStateException("the claim on " + data.path() + " cannot be given back", e);
        } finally {
            ended.countDown();
        }
    }

    private static AutoCloseable claim(DataFolder data) {
        try {
            return data.claim();
        } catch (SetupException e) {
            if (e.fault() != Fault.ALREADY_RUNNING) {
                throw e;
            }
            throw new SetupException(
                    Fault.ALREADY_RUNNING,
                    "The service runs on the data folder " + data.path()
                            + ", and holds the key in its memory. Stop it (as a system service: systemctl stop roundsman),"
                            + " run this again, and start it then.",
                    e);
        }
    }

    private KeyRotation.Done rotated(DataFolder data) {
        if (settings.database().url().isPresent()) {
            return rotated(data, ExternalDatabase.reach(settings.database()));
        }
        try (EmbeddedDatabase database =
                EmbeddedDatabase.start(data, settings.database().embeddedPort())) {
            return rotated(data, database.address());
        }
    }

    private KeyRotation.Done rotated(DataFolder data, DatabaseAddress address) {
        return KeyRotation.of(data, address, clock).rotate();
    }

    private static void say(KeyRotation.Done done) {
        Main.say("The key was changed from " + done.formerKey() + " to " + done.key() + "; "
                + (done.secrets() == 1 ? "1 secret is" : done.secrets() + " secrets are") + " sealed under it.\n"
                + "Back up secret.key now, apart from the database. Backups of the database from before need the former"
                + " key,\nwhich is kept in " + done.former()
                + ":\nput it where the backups of keys are, and delete it here.");
    }

    /** Lets the command come to its end when it is told to stop: it takes seconds. */
    private void awaitEnd() {
        try {
            if (!ended.await(LONGEST_STOP_SECONDS, TimeUnit.SECONDS)) {
                Main.say("Stopping takes longer than " + LONGEST_STOP_SECONDS + " s; giving up. Nothing is lost.");
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
