package org.roundsman.discovery;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.roundsman.discovery.store.FindingTable;
import org.roundsman.discovery.store.Tables;
import org.roundsman.fleet.Device;
import org.roundsman.fleet.DeviceDraft;
import org.roundsman.fleet.FactStore;
import org.roundsman.fleet.Site;
import org.roundsman.measure.Facts;
import org.roundsman.timeline.DeviceEvent;
import org.roundsman.timeline.EventKind;
import org.roundsman.timeline.Timeline;

/**
 * Writes down an adoption: the facts of the device, its timeline, the finding. In the transaction of the caller; the fleet
 * has noted the change in the audit.
 */
@ApplicationScoped
class AdoptionNotes {

    private final Desk desk;
    private final Timeline timeline;
    private final FindingTable findings;
    private final Tables tables;

    @Inject
    AdoptionNotes(Desk desk, Timeline timeline, FindingTable findings, Tables tables) {
        this.desk = desk;
        this.timeline = timeline;
        this.findings = findings;
        this.tables = tables;
    }

    /** A device as it was. */
    record Before(DeviceDraft draft, String site) {}

    /** @param before null for a new device */
    void note(Site site, FoundDevice line, Device device, Before before) {
        Instant now = desk.now();
        storeFacts(site, line, device);
        String detail = line.decision().reason()
                + (line.decision().evidence().isEmpty()
                        ? ""
                        : "\n" + String.join("\n", line.decision().evidence()));
        if (before == null) {
            String title = "Adopted from a sweep";
            timeline.add(List.of(new DeviceEvent(
                    device.id, now, EventKind.ADOPTED, title, "", line.first().text(), detail)));
        } else {
            boolean moved = line.decision().standing() == Standing.MOVED;
            String title = moved ? "Moved here from the site " + before.site : "Found at another address";
            timeline.add(List.of(new DeviceEvent(
                    device.id,
                    now,
                    EventKind.ADDRESS_CHANGED,
                    title,
                    text(before.draft.host(), before.draft.port()),
                    line.first().text(),
                    detail)));
        }
        findings.adopted(line.at().stream().map(FoundDevice.Address::findingId).toList(), device.id, now);
    }

    private static String text(String host, int port) {
        return new FoundDevice.Address(0, host, port).text();
    }

    private void storeFacts(Site site, FoundDevice line, Device device) {
        Facts facts = line.facts();
        if (facts.values().isEmpty()) {
            return; // it fell silent while it was read: the first rounds will tell
        }
        Map<String, String> values = new TreeMap<>();
        facts.values().forEach((fact, value) -> values.put(fact.name(), value));
        FactStore.Said said = new FactStore.Said(
                values,
                facts.radios().stream()
                        .map(radio -> new FactStore.Radio(radio.number(), radio.label(), radio.mac()))
                        .toList(),
                facts.networks());
        tables.on(connection -> {
            new FactStore().store(connection, device.id, site.id, line.heardAt(), said);
            return null;
        });
    }
}
