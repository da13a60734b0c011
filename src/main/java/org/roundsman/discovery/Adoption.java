package org.roundsman.discovery;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.Device;
import org.roundsman.fleet.DeviceDraft;
import org.roundsman.fleet.DeviceMoves;
import org.roundsman.fleet.DeviceMoves.Move;
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
        Map<Long, AdoptionNotes.Before> before = before(site, changing);
        Map<Chosen, Device> settled = new LinkedHashMap<>();
        move(site, changing, before, faults).forEach(settled::put);
        chosen.stream().filter(c -> !c.line.decision().changesDevice()).forEach(c -> add(siteId, c, faults)
                .ifPresent(device -> settled.put(c, device)));
        require(faults);
        settled.forEach((c, device) -> notes.note(site, c.line, device, before.get(device.id)));
        return count(chosen);
    }

    private Map<Long, AdoptionNotes.Before> before(Site site, List<Chosen> changing) {
        Map<Long, AdoptionNotes.Before> before = new HashMap<>();
        changing.forEach(c -> devices.find(CustomerScope.of(site.customer.id), c.deviceId())
                .ifPresent(device ->
                        before.put(device.id, new AdoptionNotes.Before(DeviceDraft.of(device), device.site.name))));
        return before;
    }

    private Map<Chosen, Device> move(
            Site site, List<Chosen> changing, Map<Long, AdoptionNotes.Before> before, Map<String, String> faults) {
        Map<Chosen, Device> moved = new LinkedHashMap<>();
        if (changing.isEmpty()) {
            return moved;
        }
        try {
            Map<Long, Device> done = moves.move(changing.stream()
                    .map(c -> move(site, c, before.get(c.deviceId())))
                    .toList());
            changing.forEach(c -> moved.put(c, done.get(c.deviceId())));
        } catch (InputRejected e) {
            changing.forEach(c -> e.faults().forEach((field, text) -> {
                String end = "-" + c.deviceId();
                if (field.endsWith(end)) {
                    faults.put(
                            field(field.substring(0, field.length() - end.length())) + "-" + c.entry.findingId(), text);
                }
            }));
        }
        return moved;
    }

    /** A device that only changed its address keeps name and place. */
    private static Move move(Site site, Chosen chosen, AdoptionNotes.Before before) {
        FoundDevice line = chosen.line;
        boolean keeps = line.decision().standing() != Standing.MOVED && before != null;
        return new Move(
                chosen.deviceId(),
                site.id,
                line.first().host(),
                line.first().port(),
                keeps ? before.draft().name() : chosen.entry.name(),
                keeps ? before.draft().place() : chosen.entry.place(),
                line.credentialId() == null ? 0 : line.credentialId());
    }

    private Optional<Device> add(long siteId, Chosen chosen, Map<String, String> faults) {
        try {
            return Optional.of(devices.add(siteId, draft(chosen)));
        } catch (InputRejected e) {
            e.faults().forEach((field, text) -> faults.put(field(field) + "-" + chosen.entry.findingId(), text));
            return Optional.empty();
        }
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

    private static String field(String field) {
        return Set.of("name", "kind", "place", "host").contains(field) ? field : "line";
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
