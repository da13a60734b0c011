package org.roundsman.polling;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.context.control.ActivateRequestContext;
import jakarta.inject.Inject;
import java.time.Duration;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.roundsman.fleet.CredentialSecrets;
import org.roundsman.fleet.Credentials;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.Device;
import org.roundsman.fleet.Devices;
import org.roundsman.snmp.Agent;
import org.roundsman.snmp.SnmpAccess;

/** The devices of the fleet, with their credentials opened. */
@ApplicationScoped
@ActivateRequestContext
public class FleetPollTargets implements PollTargets {

    private final Devices devices;
    private final Credentials credentials;

    @Inject
    FleetPollTargets(Devices devices, Credentials credentials) {
        this.devices = devices;
        this.credentials = credentials;
    }

    @Override
    public List<PollTarget> watched() {
        Map<Long, SnmpAccess> opened = new HashMap<>();
        return devices.watched().stream()
                .map(device -> target(
                        device,
                        opened.computeIfAbsent(
                                device.credential.id, id -> access(credentials.secrets(device.credential)))))
                .toList();
    }

    @Override
    public Optional<PollTarget> find(long deviceId) {
        return devices.find(CustomerScope.everyone(), deviceId)
                .map(device -> target(device, access(credentials.secrets(device.credential))));
    }

    private static PollTarget target(Device device, SnmpAccess access) {
        return new PollTarget(
                device.id,
                device.site.id,
                new Agent(device.host, device.port, access),
                Duration.ofSeconds(device.intervalSeconds));
    }

    private static SnmpAccess access(CredentialSecrets secrets) {
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
