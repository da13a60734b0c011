package org.roundsman.alarms;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Event;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.Consumer;
import java.util.function.Supplier;
import javax.sql.DataSource;
import org.roundsman.alarms.life.Deed;
import org.roundsman.alarms.store.ActRows;
import org.roundsman.alarms.store.Intake;
import org.roundsman.alarms.store.NameRows;
import org.roundsman.alarms.store.Sql;
import org.roundsman.alarms.store.VerdictRows;
import org.roundsman.audit.Actor;
import org.roundsman.audit.AuditEntries;
import org.roundsman.audit.AuditEntry.Subject;
import org.roundsman.audit.AuditTrail;
import org.roundsman.audit.FieldSet;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.InputRejected;
import org.roundsman.system.Transaction;

/**
 * Takes what was seen, what was worked out and what people do, and keeps the alarms. Each call is one transaction of its own,
 * and one at a time, so that the numbers of changes rise in the order in which they were committed. Afterwards it tells by
 * {@link AlarmsChanged} which alarms changed. Thread-safe; the calling thread must be in no transaction.
 */
@ApplicationScoped
public class AlarmDesk implements SignalSink {

    /** One writer at a time, also among several processes at one database. */
    private static final long LOCK = 7_417_000_000_000_000L;

    private final ReentrantLock turn = new ReentrantLock();
    private final DataSource database;
    private final Clock clock;
    private final Supplier<Actor> actor;
    private final Consumer<AlarmsChanged> changed;

    @Inject
    AlarmDesk(DataSource database, Clock clock, AuditTrail audit, Event<AlarmsChanged> changed) {
        this(database, clock, audit::actor, changed::fire);
    }

    /** A desk without a container. */
    public AlarmDesk(DataSource database, Clock clock, Supplier<Actor> actor, Consumer<AlarmsChanged> changed) {
        this.database = database;
        this.clock = clock;
        this.actor = actor;
        this.changed = changed;
    }

    /** Takes signals in the order in which things happened. Raises of a device or site that was removed are ignored. */
    @Override
    public void accept(List<Signal> signals) {
        accept(signals, List.of());
    }

    /** Takes signals, then what was worked out, together or not at all. Verdicts on alarms that are not active are ignored. */
    public void accept(List<Signal> signals, List<Verdict> verdicts) {
        if (signals.isEmpty() && verdicts.isEmpty()) {
            return;
        }
        tell(inTurn(connection -> {
            Set<Long> ids = new LinkedHashSet<>(Intake.take(connection, signals));
            ids.addAll(VerdictRows.judge(connection, verdicts));
            return ids;
        }));
    }

    /** Tells which active alarms lie in planned work at this moment; all others do not. */
    public void plannedNow(Set<Long> alarmIds) {
        tell(inTurn(connection -> VerdictRows.planned(connection, alarmIds)));
    }

    /** Ends shelves whose time is over, clears alarms of what was removed from the fleet, takes new names over. */
    void tidy() {
        Instant now = clock.instant();
        tell(inTurn(connection -> {
            Set<Long> ids = new LinkedHashSet<>(ActRows.endShelves(connection, now));
            ids.addAll(Intake.clearOrphans(connection, now));
            ids.addAll(NameRows.refresh(connection));
            return ids;
        }));
    }

    /**
     * Somebody deals with it.
     *
     * @param note may be empty
     * @return false where the scope has no such alarm; so with all that follow
     * @throws InputRejected while it is shelved, and once it is cleared
     */
    public boolean acknowledge(CustomerScope scope, long alarmId, String note) {
        return act(scope, alarmId, Deed.of(AlarmAct.Kind.ACK, note));
    }

    /**
     * The one who asks has it, and acknowledges it by that.
     *
     * @throws InputRejected while it is shelved, and once it is cleared
     */
    public boolean take(CustomerScope scope, long alarmId) {
        return act(scope, alarmId, Deed.of(AlarmAct.Kind.TAKE, ""));
    }

    /** Nobody has it any more; acknowledged, it is as new again. */
    public boolean release(CustomerScope scope, long alarmId) {
        return act(scope, alarmId, Deed.of(AlarmAct.Kind.RELEASE, ""));
    }

    /** @throws InputRejected when the text is empty or too long */
    public boolean note(CustomerScope scope, long alarmId, String text) {
        return act(scope, alarmId, Deed.of(AlarmAct.Kind.NOTE, text));
    }

    /**
     * Puts it aside: it stays as it is but tells nobody, also when it clears and comes again, until that time.
     *
     * @param until in the future, at most 90 days
     * @throws InputRejected when there is no reason, the time does not do, or it is cleared
     */
    public boolean shelve(CustomerScope scope, long alarmId, Instant until, String reason) {
        return act(scope, alarmId, Deed.shelve(until, reason));
    }

    public boolean unshelve(CustomerScope scope, long alarmId) {
        return act(scope, alarmId, Deed.of(AlarmAct.Kind.UNSHELVE, ""));
    }

    /**
     * Somebody holds it to be resolved. It stays active until it clears by itself, and is open again when it becomes worse.
     *
     * @throws InputRejected while it is shelved, and once it is cleared
     */
    public boolean close(CustomerScope scope, long alarmId, String note) {
        return act(scope, alarmId, Deed.of(AlarmAct.Kind.CLOSE, note));
    }

    private boolean act(CustomerScope scope, long alarmId, Deed deed) {
        Actor who = actor.get();
        Instant now = clock.instant();
        boolean[] found = {false};
        tell(inTurn(connection -> {
            var done = ActRows.act(connection, scope, alarmId, deed, who.name(), now);
            found[0] = done.isPresent();
            if (done.isEmpty() || !done.get().changed()) {
                return Set.of();
            }
            AuditEntries.add(connection, who, now, List.of(audited(done.get(), deed)));
            return Set.of(alarmId);
        }));
        return found[0];
    }

    private static AuditTrail.Note audited(ActRows.Done done, Deed deed) {
        FieldSet before = new FieldSet()
                .with("state", done.before().state().word())
                .with("taken by", done.before().takenBy())
                .with("until", done.before().until().orElse(null));
        FieldSet after = new FieldSet()
                .with("state", done.after().state().word())
                .with("taken by", done.after().takenBy())
                .with("until", done.after().until().orElse(null))
                .with("text", deed.text());
        Subject subject = new Subject("alarm", done.alarmId(), done.name(), done.customerId());
        return new AuditTrail.Note(deed.kind().word(), subject, FieldSet.between(before, after));
    }

    private Set<Long> inTurn(Transaction.Work<Set<Long>> work) {
        turn.lock();
        try {
            return Transaction.run(database, connection -> {
                lock(connection);
                return work.on(connection);
            });
        } catch (SQLException e) {
            throw new IllegalStateException("Alarms could not be written: " + e.getMessage(), e);
        } finally {
            turn.unlock();
        }
    }

    private static void lock(Connection connection) throws SQLException {
        Sql.rows(connection, "select pg_advisory_xact_lock(?)", row -> 0, LOCK);
    }

    private void tell(Set<Long> ids) {
        if (!ids.isEmpty()) {
            changed.accept(new AlarmsChanged(ids));
        }
    }
}
