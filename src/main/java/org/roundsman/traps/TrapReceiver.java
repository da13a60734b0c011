package org.roundsman.traps;

import io.micrometer.core.instrument.MeterRegistry;
import io.quarkus.scheduler.Scheduled;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Event;
import jakarta.inject.Inject;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.util.Collection;
import java.util.HexFormat;
import java.util.Optional;
import java.util.function.Function;
import javax.sql.DataSource;
import org.jboss.logging.Logger;
import org.roundsman.polling.Rounds;
import org.roundsman.profiles.ProfilesInUse;
import org.roundsman.snmp.EngineIdentity;
import org.roundsman.snmp.NamedNotification;
import org.roundsman.snmp.NotificationReceiver;
import org.roundsman.snmp.SnmpAccess;

/** Receives traps and informs while the service runs. A port that cannot be had does not keep the service from running. */
@ApplicationScoped
public class TrapReceiver {

    private static final Logger LOG = Logger.getLogger(TrapReceiver.class);

    private final TrapsConfig config;
    private final SenderDirectory senders;
    private final Clock clock;
    private final DataSource database;
    private final NoticeWriter writer;
    private final Arrivals arrivals;
    private volatile ReceiverState state = new ReceiverState.Off();
    private volatile NotificationReceiver receiver;
    private EngineIdentity own;
    private boolean started;

    /** What follows from a notification elsewhere. */
    @ApplicationScoped
    static class Follow {
        private final Rounds rounds;
        private final Event<NotificationReceived> received;

        @Inject
        Follow(Rounds rounds, Event<NotificationReceived> received) {
            this.rounds = rounds;
            this.received = received;
        }

        void follow(NotificationReceived notification, TrapsConfig config) {
            rounds.soon(notification.deviceId(), config.roundEvery());
            received.fire(notification);
        }
    }

    /** What is counted elsewhere. */
    @ApplicationScoped
    static class Counts {
        private final Arrivals.Counted counted;

        @Inject
        Counts(UnnamedNotifications unnamed, StrangeSenders strangers, MeterRegistry registry) {
            this.counted = new Arrivals.Counted(unnamed, strangers, new TrapsMeters(registry));
        }

        Arrivals.Counted counted() {
            return counted;
        }
    }

    /** Where notifications come from and go to. */
    @ApplicationScoped
    static class Ends {
        private final DataSource database;
        private final SenderDirectory senders;
        private final Function<String, Optional<NamedNotification>> named;
        private final PortNames ports;
        private final Clock clock;

        @Inject
        Ends(DataSource database, SenderDirectory senders, ProfilesInUse profiles, PortNames ports, Clock clock) {
            this(database, senders, oid -> profiles.current().notification(oid), ports, clock);
        }

        Ends(
                DataSource database,
                SenderDirectory senders,
                Function<String, Optional<NamedNotification>> named,
                PortNames ports,
                Clock clock) {
            this.database = database;
            this.senders = senders;
            this.named = named;
            this.ports = ports;
            this.clock = clock;
        }

        DataSource database() {
            return database;
        }

        SenderDirectory senders() {
            return senders;
        }

        NoticeWords words() {
            return new NoticeWords(named);
        }

        PortNames ports() {
            return ports;
        }

        Clock clock() {
            return clock;
        }
    }

    @Inject
    TrapReceiver(TrapsConfig config, Ends ends, Counts counts, Follow follow) {
        this.config = config;
        this.database = ends.database();
        this.senders = ends.senders();
        this.clock = ends.clock();
        Allowances allowances = new Allowances(config.deviceBurst(), config.deviceOnePer(), config.sumEvery());
        this.writer = new NoticeWriter(
                new NoticeWriter.Parts(
                        database,
                        allowances,
                        counts.counted().unnamed(),
                        counts.counted().meters(),
                        ends.ports()),
                clock,
                notification -> follow.follow(notification, config));
        this.arrivals = new Arrivals(ends.words(), allowances, counts.counted(), writer, clock);
    }

    /** Whether notifications can come in now. */
    public ReceiverState state() {
        return state;
    }

    /** Begins to receive, unless the settings keep it off. */
    public synchronized void start() {
        if (!config.enabled()) {
            LOG.info("Traps and informs are switched off by roundsman.traps.enabled");
            return;
        }
        try {
            own = OwnEngine.begin(database);
        } catch (SQLException e) {
            throw new IllegalStateException("The SNMP engine of our own could not be read: " + e.getMessage(), e);
        }
        writer.start();
        started = true;
        Collection<SnmpAccess> secrets = senders.refresh();
        open();
        prepare(secrets);
    }

    private void open() {
        try {
            InetSocketAddress at = new InetSocketAddress(InetAddress.getByName(config.address()), config.port());
            receiver = NotificationReceiver.open(at, own, senders, arrivals, config.limits());
            state = new ReceiverState.Listening(
                    config.address(), receiver.address().getPort(), clock.instant());
            LOG.infof(
                    "Receiving traps and informs on %s, UDP port %d, as SNMP engine %s",
                    config.address(),
                    receiver.address().getPort(),
                    HexFormat.of().formatHex(own.id()));
        } catch (IOException | IllegalArgumentException e) {
            blocked(e);
        }
    }

    private void blocked(Exception e) {
        Instant since = state instanceof ReceiverState.Blocked before ? before.since() : clock.instant();
        String why = "UDP port " + config.port() + " on " + config.address() + " cannot be used (" + e.getMessage()
                + "), so no trap or inform comes in. Stop the program that has it, or choose another by"
                + " roundsman.traps.port; it is tried again every ten seconds.";
        if (!(state instanceof ReceiverState.Blocked)) {
            LOG.warn(why);
        }
        state = new ReceiverState.Blocked(why, since);
    }

    @Scheduled(every = "10s", delayed = "10s", concurrentExecution = Scheduled.ConcurrentExecution.SKIP)
    synchronized void tryAgain() {
        if (started && state instanceof ReceiverState.Blocked) {
            open();
        }
    }

    /** Several changes of the fleet in a row are taken up together. */
    @Scheduled(every = "1s", concurrentExecution = Scheduled.ConcurrentExecution.SKIP)
    void refresh() {
        if (config.enabled()) {
            prepare(senders.refresh());
        }
    }

    private void prepare(Collection<SnmpAccess> secrets) {
        NotificationReceiver open = receiver;
        if (open != null) {
            secrets.forEach(open::prepare);
        }
    }

    /** Ends receiving, and stores what waits. */
    public synchronized void stop() {
        if (!started) {
            return;
        }
        started = false;
        state = new ReceiverState.Off();
        if (receiver != null) {
            receiver.close();
            receiver = null;
        }
        writer.close();
    }
}
