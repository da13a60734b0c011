package org.roundsman.topology;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Clock;
import java.time.temporal.ChronoUnit;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import javax.sql.DataSource;
import org.roundsman.audit.AuditEntry.Subject;
import org.roundsman.audit.AuditTrail;
import org.roundsman.audit.FieldSet;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.Device;
import org.roundsman.fleet.Devices;
import org.roundsman.fleet.InputRejected;
import org.roundsman.topology.store.EvidenceRows;
import org.roundsman.topology.store.PlaceRows;
import org.roundsman.topology.store.WordRows;
import org.roundsman.topology.store.Work;

/**
 * Lets a person say on which port a device hangs: to fill a gap, to correct what was found, or to keep what was found from
 * changing. It holds against all evidence until it is taken back; evidence that disagrees is shown beside it. Thread-safe.
 */
@ApplicationScoped
public class PortWords {

    private static final int LONGEST_NOTE = 500;

    private final DataSource database;
    private final Devices devices;
    private final AuditTrail audit;
    private final TopologyConfig config;
    private final Clock clock;

    @Inject
    PortWords(DataSource database, Devices devices, AuditTrail audit, TopologyConfig config, Clock clock) {
        this.database = database;
        this.devices = devices;
        this.audit = audit;
        this.config = config;
        this.clock = clock;
    }

    /** What was said about a device in the scope. */
    public Optional<PortWord> of(CustomerScope scope, long deviceId) {
        return devices.find(scope, deviceId).flatMap(device -> Work.ask(database, c -> WordRows.of(c, device.id)));
    }

    /**
     * Sets where a device hangs.
     *
     * @param port by {@link Port#number}; empty when only the device above is known
     * @throws InputRejected naming what cannot be taken; {@code id} when the device is not there or outside of the scope
     */
    @Transactional
    public void set(CustomerScope scope, long deviceId, long parentId, OptionalInt port, String note) {
        Device device = require(scope, deviceId);
        Device parent = devices.find(scope, parentId)
                .filter(other -> other.site.id.equals(device.site.id) && !other.id.equals(device.id))
                .orElseThrow(() -> rejected("place", "choose a device of the same site"));
        if (note.strip().length() > LONGEST_NOTE) {
            throw rejected("note", "must have at most " + LONGEST_NOTE + " characters");
        }
        Work.ask(database, connection -> {
            if (WordRows.leads(connection, parentId, deviceId)) {
                throw rejected("place", parent.name + " was itself set to hang below " + device.name);
            }
            String portName = port.isEmpty() ? "" : portName(connection, parent, port.getAsInt());
            Optional<PortWord> before = WordRows.of(connection, deviceId);
            PortWord word = new PortWord(
                    deviceId,
                    parentId,
                    parent.name,
                    port,
                    portName,
                    note.strip(),
                    audit.actor().name(),
                    clock.instant().truncatedTo(ChronoUnit.MILLIS));
            WordRows.store(connection, word);
            audit.changed(subject(device), fields(before), fields(Optional.of(word)));
            return workOut(connection, device);
        });
    }

    /**
     * Takes back what was said; what is found decides again. Nothing happens when nothing was said.
     *
     * @throws InputRejected naming {@code id} when the device is not there or outside of the scope
     */
    @Transactional
    public void takeBack(CustomerScope scope, long deviceId) {
        Device device = require(scope, deviceId);
        Work.ask(database, connection -> {
            Optional<PortWord> before = WordRows.of(connection, deviceId);
            WordRows.remove(connection, deviceId);
            audit.changed(subject(device), fields(before), fields(Optional.empty()));
            return workOut(connection, device);
        });
    }

    private int workOut(Connection connection, Device device) throws SQLException {
        return PlaceRows.workOut(
                connection,
                device.site.id,
                config.oldAfter(),
                config.edgePortAddresses(),
                clock.instant().truncatedTo(ChronoUnit.MILLIS));
    }

    private Device require(CustomerScope scope, long deviceId) {
        return devices.find(scope, deviceId).orElseThrow(() -> rejected("id", "this device is not there any more"));
    }

    private static String portName(Connection connection, Device parent, int number) throws SQLException {
        Port port = EvidenceRows.ports(connection, parent.site.id).getOrDefault(parent.id, java.util.List.of()).stream()
                .filter(each -> each.number() == number)
                .findFirst()
                .orElseThrow(() -> rejected("place", parent.name + " has no such port any more"));
        return port.name().isEmpty() ? port.description() : port.name();
    }

    private static InputRejected rejected(String field, String fault) {
        return new InputRejected(Map.of(field, fault));
    }

    private static Subject subject(Device device) {
        return new Subject("device", device.id, device.name, device.site.customer.id);
    }

    private static FieldSet fields(Optional<PortWord> word) {
        return new FieldSet()
                .with("switch port, set by a person", word.map(PortWord::words).orElse(""))
                .with("note on the switch port", word.map(PortWord::note).orElse(""));
    }
}
