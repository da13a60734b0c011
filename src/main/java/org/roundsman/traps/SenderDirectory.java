package org.roundsman.traps;

import jakarta.annotation.PreDestroy;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.context.control.ActivateRequestContext;
import jakarta.enterprise.event.Observes;
import jakarta.enterprise.event.TransactionPhase;
import jakarta.inject.Inject;
import java.net.InetAddress;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jboss.logging.Logger;
import org.roundsman.fleet.Credential;
import org.roundsman.fleet.Credentials;
import org.roundsman.fleet.Device;
import org.roundsman.fleet.DeviceFacts;
import org.roundsman.fleet.Devices;
import org.roundsman.fleet.FleetChanged;
import org.roundsman.polling.FleetPollTargets;
import org.roundsman.snmp.NotificationSender;
import org.roundsman.snmp.NotificationSenders;
import org.roundsman.snmp.SnmpAccess;
import org.roundsman.system.SealException;

/**
 * Which devices may send notifications from which addresses, and with which secrets: those by which the device is read,
 * and all others that are usable at its site. Read from the fleet now and then, answered from memory.
 */
@ApplicationScoped
class SenderDirectory implements NotificationSenders {

    private static final Logger LOG = Logger.getLogger(SenderDirectory.class);
    private static final Duration READ_EVERY = Duration.ofMinutes(5);
    /** Stands for the owner of credentials that every customer's devices may use. */
    private static final long EVERYBODY = 0;

    private final Devices devices;
    private final Credentials credentials;
    private final DeviceFacts facts;
    private final Clock clock;
    private final HostAddresses hosts;
    private final AtomicBoolean stale = new AtomicBoolean(true);
    private volatile Map<InetAddress, List<NotificationSender>> byAddress = Map.of();
    private Instant readAt = Instant.MIN;

    @Inject
    SenderDirectory(Devices devices, Credentials credentials, DeviceFacts facts, Clock clock) {
        this.devices = devices;
        this.credentials = credentials;
        this.facts = facts;
        this.clock = clock;
        this.hosts = new HostAddresses(clock, () -> stale.set(true));
    }

    @Override
    public List<NotificationSender> at(InetAddress address) {
        return byAddress.getOrDefault(address, List.of());
    }

    void fleetChanged(@Observes(during = TransactionPhase.AFTER_SUCCESS) FleetChanged event) {
        stale.set(true);
    }

    /**
     * Reads the fleet again when it changed, or a while after the last time. One thread at a time.
     *
     * @return the secrets in use when it was read, else none
     */
    @ActivateRequestContext
    synchronized Collection<SnmpAccess> refresh() {
        boolean due = clock.instant().isAfter(readAt.plus(READ_EVERY).plusMillis(1)) || readAt.equals(Instant.MIN);
        if (!stale.getAndSet(false) && !due) {
            return List.of();
        }
        try {
            return read();
        } catch (RuntimeException e) {
            stale.set(true);
            LOG.warnf(
                    "The list of devices could not be read; notifications are taken from those before: %s",
                    e.getMessage());
            return List.of();
        }
    }

    private Collection<SnmpAccess> read() {
        List<Device> all = devices.all();
        Map<Long, String> engines = facts.everywhere("ENGINE_ID");
        List<Opened> opened = credentials.usableBy(null).stream()
                .flatMap(credential -> open(credential).stream())
                .toList();
        Map<Long, List<Opened>> byOwner = opened.stream().collect(Collectors.groupingBy(Opened::owner));
        Map<InetAddress, List<NotificationSender>> found = new HashMap<>();
        Set<String> names = new HashSet<>();
        for (Device device : all) {
            names.add(device.host);
            for (InetAddress address : hosts.of(device.host)) {
                List<Opened> possible = Stream.of(EVERYBODY, device.site.customer.id)
                        .flatMap(owner -> byOwner.getOrDefault(owner, List.of()).stream())
                        .toList();
                sender(device, possible, engines.getOrDefault(device.id, ""))
                        .ifPresent(sender -> found.computeIfAbsent(address, a -> new ArrayList<>())
                                .add(sender));
            }
        }
        hosts.keepOnly(names);
        byAddress = found;
        readAt = clock.instant();
        return opened.stream().map(Opened::access).toList();
    }

    private record Opened(Credential credential, SnmpAccess access) {
        long owner() {
            return credential.customer == null ? EVERYBODY : credential.customer.id;
        }
    }

    private Optional<Opened> open(Credential credential) {
        try {
            return Optional.of(new Opened(credential, FleetPollTargets.access(credentials.secrets(credential))));
        } catch (SealException e) {
            // the rounds say so already, with the name of the credentials
            LOG.debugf("The credentials “%s” let no notification in: %s", credential.name, e.getMessage());
            return Optional.empty();
        }
    }

    private static Optional<NotificationSender> sender(Device device, List<Opened> opened, String engineId) {
        SnmpAccess own = null;
        List<SnmpAccess> others = new ArrayList<>();
        for (Opened one : opened) {
            if (one.credential.id.equals(device.credential.id)) {
                own = one.access;
            } else if (one.credential.usableAt(device.site.id, device.site.customer.id)) {
                others.add(one.access);
            }
        }
        if (own == null && !others.isEmpty()) {
            own = others.get(0);
        }
        return own == null
                ? Optional.empty()
                : Optional.of(new NotificationSender(device.id, device.site.customer.id, own, others, engineId));
    }

    @PreDestroy
    void close() {
        hosts.close();
    }
}
