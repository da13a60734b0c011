package org.roundsman.polling;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.context.control.ActivateRequestContext;
import jakarta.inject.Inject;
import java.time.Duration;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jboss.logging.Logger;
import org.roundsman.fleet.Credential;
import org.roundsman.fleet.CredentialSecrets;
import org.roundsman.fleet.Credentials;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.Device;
import org.roundsman.fleet.Devices;
import org.roundsman.snmp.Agent;
import org.roundsman.snmp.SnmpAccess;
import org.roundsman.system.SealException;

/** The devices of the fleet, with their credentials opened. */
@ApplicationScoped
@ActivateRequestContext
public class FleetPollTargets implements PollTargets {

    private static final Logger LOG = Logger.getLogger(FleetPollTargets.class);

    private final Devices devices;
    private final Credentials credentials;

    @Inject
    FleetPollTargets(Devices devices, Credentials credentials) {
        this.devices = devices;
        this.credentials = credentials;
    }

    /** Credentials that cannot be opened keep only their own devices from being watched. */
    @Override
    public List<PollTarget> watched() {
        Map<Long, Optional<SnmpAccess>> opened = new HashMap<>();
        return devices.watched().stream()
                .flatMap(device -> opened
                        .computeIfAbsent(device.credential.id, id -> open(device.credential))
                        .map(access -> target(device, access))
                        .stream())
                .toList();
    }

    private Optional<SnmpAccess> open(Credential credential) {
        try {
            return Optional.of(access(credentials.secrets(credential)));
        } catch (SealException e) {
            LOG.warnf(
                    "The credentials “%s” cannot be opened, and their devices are not watched until they are entered"
                            + " again: %s",
                    credential.name, e.getMessage());
            return Optional.empty();
        }
    }

    /**
     * {@inheritDoc}
     *
     * @throws SealException when its credentials do not open
     */
    @Override
    public Optional<PollTarget> find(long deviceId) {
        return devices.find(CustomerScope.everyone(), deviceId)
                .map(device -> target(device, access(credentials.secrets(device.credential))));
    }

    /**
     * One device as other credentials would reach it.
     *
     * @throws SealException when the credentials do not open
     */
    Agent agent(Device device, Credential other) {
        return new Agent(device.host, device.port, access(credentials.secrets(other)));
    }

    private static PollTarget target(Device device, SnmpAccess access) {
        return new PollTarget(
                device.id,
                device.site.id,
                new Agent(device.host, device.port, access),
                Duration.ofSeconds(device.intervalSeconds));
    }

    /** Opened credentials as SNMP knows them. */
    public static SnmpAccess access(CredentialSecrets secrets) {
        if (secrets.version() < 3) {
            return new SnmpAccess.Community(secrets.version(), secrets.community());
        }
        return new SnmpAccess.User(
                secrets.userName(),
                SnmpAccess.Level.valueOf(secrets.level()),
                secrets.authProtocol().isEmpty() ? null : SnmpAccess.AuthProtocol.valueOf(secrets.authProtocol()),
                secrets.authPassword(),
                secrets.privProtocol().isEmpty() ? null : SnmpAccess.PrivProtocol.valueOf(secrets.privProtocol()),
                secrets.privPassword());
    }
}
