package org.roundsman.fleet;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.jboss.logging.Logger;
import org.roundsman.audit.Actor;
import org.roundsman.audit.AuditEntries;
import org.roundsman.audit.AuditEntry.FieldChange;
import org.roundsman.audit.AuditEntry.Subject;
import org.roundsman.audit.AuditTrail.Note;
import org.roundsman.system.DataFolder;
import org.roundsman.system.DatabaseAddress;
import org.roundsman.system.KeyFiles;
import org.roundsman.system.SealException;
import org.roundsman.system.Sealer;
import org.roundsman.system.SecretKey;
import org.roundsman.system.SetupException;
import org.roundsman.system.SetupException.Fault;

/**
 * Changes the key under which secrets are sealed, while the service is stopped. The next key is on disk before the first
 * secret is sealed under it; all of them change in one transaction; only after its commit the next key takes the place of
 * the former one, which stays beside it. Cut short at any moment, every secret opens under one of the two keys, and
 * {@link #finish} tells which and brings the change to its end.
 */
public final class KeyRotation {

    /** Moments at which the machine may lose its power. */
    enum Moment {
        NEXT_KEY_WRITTEN,
        HALF_RESEALED,
        RESEALED,
        COMMITTED,
        DONE
    }

    private static final String NOT_SET_UP =
            "The database was not set up by this version of the program. Start the service once, stop it, and change"
                    + " the key then.";

    private static final Logger LOG = Logger.getLogger(KeyRotation.class);

    private final KeyFiles keys;
    private final DatabaseAddress database;
    private final Clock clock;
    private final Consumer<Moment> passing;

    KeyRotation(DataFolder folder, DatabaseAddress database, Clock clock, Consumer<Moment> passing) {
        this.keys = KeyFiles.in(folder);
        this.database = database;
        this.clock = clock;
        this.passing = passing;
    }

    /**
     * For a data folder that the caller has claimed, and a database that runs.
     *
     * @param database whose owner the user is
     */
    public static KeyRotation of(DataFolder folder, DatabaseAddress database, Clock clock) {
        return new KeyRotation(folder, database, clock, moment -> {});
    }

    /**
     * What was done.
     *
     * @param secrets how many were sealed anew
     * @param formerKey id of the key before
     * @param key id of the key from now on
     * @param former file in which the key before is kept
     */
    public record Done(int secrets, String formerKey, String key, Path former) {}

    /**
     * Changes the key.
     *
     * @throws SetupException when the database cannot be used, or a secret opens under neither key; every secret still
     *     opens as before then
     */
    public Done rotate() {
        return change(true);
    }

    /**
     * Brings a change that was cut short to its end, if there was one. To be called before the service seals or opens
     * anything.
     *
     * @throws SetupException when the database cannot be used
     */
    public Optional<Done> finish() {
        if (!keys.changing()) {
            return Optional.empty();
        }
        Sealer next = new Sealer(keys.next());
        boolean begun = inTransaction(connection -> SealedSecrets.there(connection)
                && SealedSecrets.read(connection).stream()
                        .anyMatch(secret -> next.sealedUnderThisKey(secret.sealed())));
        if (!begun) {
            LOG.info("A change of the key was cut short before any secret was sealed anew; the key is as before");
            return Optional.empty();
        }
        Done done = change(false);
        LOG.infof("A change of the key from %s to %s was cut short; it is done now", done.formerKey(), done.key());
        return Optional.of(done);
    }

    private Done change(boolean all) {
        SecretKey former = keys.current();
        SecretKey next = keys.next();
        passing.accept(Moment.NEXT_KEY_WRITTEN);
        int sealed = inTransaction(connection -> {
            if (!SealedSecrets.there(connection)) {
                throw new SetupException(Fault.DATABASE, NOT_SET_UP);
            }
            int count = reseal(connection, former, next, all);
            note(connection, former, next, count);
            passing.accept(Moment.RESEALED);
            return count;
        });
        passing.accept(Moment.COMMITTED);
        Path kept = keys.promote();
        passing.accept(Moment.DONE);
        return new Done(sealed, former.idText(), next.idText(), kept);
    }

    private int reseal(Connection connection, SecretKey former, SecretKey next, boolean all) throws SQLException {
        Sealer nextSealer = new Sealer(next);
        CredentialSeals before = new CredentialSeals(new Sealer(former));
        CredentialSeals after = new CredentialSeals(nextSealer);
        SealedSecrets.lock(connection);
        List<SealedSecrets.Secret> secrets = SealedSecrets.read(connection);
        int count = 0;
        for (SealedSecrets.Secret secret : secrets) {
            if (nextSealer.sealedUnderThisKey(secret.sealed())) {
                continue;
            }
            try {
                String opened = before.open(secret.id(), secret.field(), secret.sealed());
                SealedSecrets.write(connection, secret, after.seal(secret.id(), secret.field(), opened));
                count++;
            } catch (SealException e) {
                leave(secret, e, all);
            }
            if (count == (secrets.size() + 1) / 2) {
                passing.accept(Moment.HALF_RESEALED);
            }
        }
        return count;
    }

    private static void leave(SealedSecrets.Secret secret, SealException e, boolean all) {
        if (all) {
            throw new SetupException(
                    Fault.KEY_FILE,
                    "The key was not changed: a secret of “" + secret.name() + "” (" + secret + ") does not open. "
                            + e.getMessage() + " Or remove what it belongs to; then change the key.",
                    e);
        }
        LOG.warnf("A secret of “%s” (%s) opens under no key here: %s", secret.name(), secret, e.getMessage());
    }

    private void note(Connection connection, SecretKey former, SecretKey next, int count) throws SQLException {
        Actor actor = new Actor(System.getProperty("user.name", "roundsman"), null, Actor.Via.COMMAND, "", "");
        List<FieldChange> changes = List.of(
                new FieldChange("key", former.idText(), next.idText()),
                new FieldChange("secrets sealed anew", "", String.valueOf(count)));
        Note note = new Note("changed", new Subject("key of secrets", null, "secret.key", null), changes);
        AuditEntries.add(connection, actor, clock.instant(), List.of(note));
    }

    /** Work on the database. */
    private interface Work<T> {
        T on(Connection connection) throws SQLException;
    }

    private <T> T inTransaction(Work<T> work) {
        try (Connection connection =
                DriverManager.getConnection(database.url(), database.user(), database.password())) {
            connection.setAutoCommit(false);
            T result = work.on(connection);
            connection.commit();
            return result;
        } catch (SQLException e) {
            throw new SetupException(
                    Fault.DATABASE,
                    "The database failed while the key was changed: " + e.getMessage()
                            + ". Nothing is lost: start the service or this command again, which finds out how far it"
                            + " came, and keep every secret.key file.",
                    e);
        }
    }
}
