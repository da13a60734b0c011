package org.roundsman.discovery;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.Device;
import org.roundsman.fleet.DeviceDraft;
import org.roundsman.fleet.DeviceMoves;
import org.roundsman.fleet.DeviceMoves.Arrival;
import org.roundsman.fleet.Devices;
import org.roundsman.fleet.InputRejected;
import org.roundsman.fleet.Site;

/** Takes what a sweep found up into the fleet: all that was chosen, or nothing. Rounds begin at once. */
@ApplicationScoped
public class Adoption {

    private static final int USUAL_INTERVAL = 60;

    private final Desk desk;
    private final Reviews reviews;
    private final Devices devices;
    private final DeviceMoves moves;
    private final AdoptionNotes notes;

    @Inject
    Adoption(Desk desk, Reviews reviews, Devices devices, DeviceMoves moves, AdoptionNotes notes) {
        this.desk = desk;
        this.reviews = reviews;
        this.devices = devices;
        this.moves = moves;
        this.notes = notes;
    }

    /**
     * Adopts lines of the latest sweep as entered; those that are not ticked are passed over. A device with a new
     * address keeps its name, kind, place and past; one from another site gets the name and place entered.
     *
     * @throws InputRejected when anything cannot be taken; nothing is changed then. Faults are named by field and line:
     *     {@code name-17}, {@code kind-17}, {@code place-17}, {@code host-17}, {@code line-17}; {@code id} when the site
     *     is not there or lies outside the scope; the empty name for the whole
     */
    @Transactional
    public Adopted adopt(CustomerScope scope, long siteId, List<Review> entries) {
        Site site = desk.site(scope, siteId);
        SweepReview review = reviews.latest(scope, siteId)
                .orElseThrow(() -> new InputRejected(Map.of("", "this site was never swept")));
        Map<String, String> faults = new LinkedHashMap<>();
        List<Chosen> chosen = chosen(review, entries, faults);
        if (chosen.isEmpty() && faults.isEmpty()) {
            faults.put("", "tick what to adopt");
        }
        require(faults);
        List<Chosen> changing =
                chosen.stream().filter(c -> c.line.decision().changesDevice()).toList();
        Map<Long, Device> before = new HashMap<>();
        changing.forEach(c -> devices.find(CustomerScope.of(site.customer.id), c.deviceId())
                .ifPresent(device -> before.put(c.deviceId(), device)));
        Map<Long, DeviceDraft> drafts = new HashMap<>();
        Map<Long, String> sites = new HashMap<>();
        before.forEach((id, device) -> {
            drafts.put(id, DeviceDraft.of(device));
            sites.put(id, device.site.name);
        });
        moves.leave(before.keySet());
        Map<Chosen, Device> settled = new LinkedHashMap<>();
        changing.forEach(c -> attempt(c, faults, () -> settle(site, c)).ifPresent(device -> settled.put(c, device)));
        List<Chosen> fresh =
                chosen.stream().filter(c -> !c.line.decision().changesDevice()).toList();
        fresh.forEach(
                c -> attempt(c, faults, () -> devices.add(siteId, draft(c))).ifPresent(d -> settled.put(c, d)));
        require(faults);
        settled.forEach((c, device) -> notes.note(
                site,
                c.line,
                device,
                drafts.get(device.id) == null
                        ? null
                        : new AdoptionNotes.Before(drafts.get(device.id), sites.get(device.id))));
        return count(chosen);
    }

    /** A line with what was entered for it. */
    private record Chosen(FoundDevice line, Review entry) {
        long deviceId() {
            return line.decision().deviceId();
        }
    }

    private static List<Chosen> chosen(SweepReview review, List<Review> entries, Map<String, String> faults) {
        Map<Long, FoundDevice> lines = new HashMap<>();
        review.found().forEach(line -> lines.put(line.findingId(), line));
        List<Chosen> chosen = new ArrayList<>();
        for (Review entry : entries) {
            FoundDevice line = lines.get(entry.findingId());
            if (!entry.ticked()) {
                continue;
            }
            if (line == null || !line.isOpen()) {
                faults.put(
                        "line-" + entry.findingId(),
                        line == null
                                ? "this line is not in the list any more"
                                : "there is nothing to adopt: "
                                        + line.decision().reason());
            } else if (line.credentialId() == null && !line.decision().changesDevice()) {
                faults.put(
                        "line-" + entry.findingId(),
                        "the credentials it answered to are not there any more: sweep again");
            } else if (chosen.stream().noneMatch(c -> c.line == line)) {
                chosen.add(new Chosen(line, entry));
            }
        }
        return chosen;
    }

    private static java.util.Optional<Device> attempt(
            Chosen chosen, Map<String, String> faults, Supplier<Device> work) {
        try {
            return java.util.Optional.of(work.get());
        } catch (InputRejected e) {
            e.faults().forEach((field, text) -> faults.put(field(field) + "-" + chosen.entry.findingId(), text));
            return java.util.Optional.empty();
        }
    }

    private static String field(String field) {
        return java.util.Set.of("name", "kind", "place", "host").contains(field) ? field : "line";
    }

    private Device settle(Site site, Chosen chosen) {
        FoundDevice line = chosen.line;
        Device device = devices.find(CustomerScope.of(site.customer.id), chosen.deviceId())
                .orElseThrow(() -> new InputRejected(Map.of("line", "this device is not there any more")));
        boolean moved = line.decision().standing() == Standing.MOVED;
        long credential = line.credentialId() == null ? device.credential.id : line.credentialId();
        Arrival arrival = new Arrival(
                device.id, site.id, line.first().host(), line.first().port(), credential);
        return moves.arrive(
                arrival, moved ? chosen.entry.name() : device.name, moved ? chosen.entry.place() : device.place);
    }

    private static DeviceDraft draft(Chosen chosen) {
        FoundDevice line = chosen.line;
        return new DeviceDraft(
                chosen.entry.name(),
                chosen.entry.kind(),
                line.first().host(),
                line.first().port(),
                line.credentialId(),
                line.modelId(),
                chosen.entry.place(),
                USUAL_INTERVAL,
                false);
    }

    private static Adopted count(List<Chosen> chosen) {
        int readdressed = 0;
        int moved = 0;
        for (Chosen one : chosen) {
            readdressed += one.line.decision().standing() == Standing.NEW_ADDRESS ? 1 : 0;
            moved += one.line.decision().standing() == Standing.MOVED ? 1 : 0;
        }
        return new Adopted(chosen.size() - readdressed - moved, readdressed, moved);
    }

    private static void require(Map<String, String> faults) {
        if (!faults.isEmpty()) {
            throw new InputRejected(faults);
        }
    }
}
