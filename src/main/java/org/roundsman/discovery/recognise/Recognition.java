package org.roundsman.discovery.recognise;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.roundsman.discovery.Decision;
import org.roundsman.discovery.Standing;

/**
 * Recognises devices of the fleet in what a sweep found. Serial number counts more than base MAC address, that more
 * than a radio's MAC address, that more than the engine ID. What several devices share proves nothing; what a stronger
 * mark contradicts does not count. No two things found are ever the same device of the fleet. Devices of another customer
 * are never named.
 */
public final class Recognition {

    /** The rank of a mere address, below every mark. */
    private static final int ADDRESS = Mark.values().length;

    private final List<Known> own;
    private final List<Known> others;
    private final Shared shared;
    private final long siteId;

    private Recognition(List<Group> groups, List<Known> known, long siteId, long customerId) {
        this.own = known.stream().filter(k -> k.customerId() == customerId).toList();
        this.others = known.stream().filter(k -> k.customerId() != customerId).toList();
        this.shared = new Shared(groups, known);
        this.siteId = siteId;
    }

    /** What one group seems to be. */
    private record Claim(int rank, Known device, List<String> evidence, boolean doubtful) {}

    /** One decision for each group, in their order. */
    public static List<Decision> decide(List<Group> groups, List<Known> known, long siteId, long customerId) {
        return new Recognition(groups, known, siteId, customerId).decide(groups);
    }

    private List<Decision> decide(List<Group> groups) {
        List<Claim> claims = groups.stream().map(this::claim).toList();
        Map<Long, List<Claim>> byDevice = new HashMap<>();
        claims.stream()
                .filter(claim -> claim.device != null && !claim.doubtful)
                .forEach(claim -> byDevice.computeIfAbsent(claim.device.deviceId(), id -> new ArrayList<>())
                        .add(claim));
        Set<Claim> lost = java.util.Collections.newSetFromMap(new java.util.IdentityHashMap<>());
        byDevice.values().forEach(rivals -> lost.addAll(losers(rivals)));
        List<Decision> decisions = new ArrayList<>();
        for (int i = 0; i < groups.size(); i++) {
            Claim claim = claims.get(i);
            decisions.add(lost.contains(claim) ? beaten(claim) : decision(groups.get(i), claim));
        }
        return decisions;
    }

    /** All but the one strongest; all of them when two are equally strong. */
    private static List<Claim> losers(List<Claim> rivals) {
        List<Claim> sorted = new ArrayList<>(rivals);
        sorted.sort(Comparator.comparingInt(Claim::rank));
        boolean clear = sorted.size() == 1 || sorted.get(0).rank < sorted.get(1).rank;
        return clear ? sorted.subList(1, sorted.size()) : sorted;
    }

    private Claim claim(Group group) {
        List<String> evidence = new ArrayList<>();
        for (Mark mark : Mark.values()) {
            List<Known> alike = alike(group, mark, evidence);
            if (alike.size() == 1 && uncontradicted(group, alike.get(0), mark, evidence)) {
                Known device = alike.get(0);
                evidence.add(0, "same " + mark.word() + " as “" + device.name() + "”");
                boolean otherBoard = mark == Mark.SERIAL
                        && group.identity().contradicts(device.identity(), Mark.BASE_MAC)
                        && !shares(group, device, Mark.RADIO_MAC);
                if (otherBoard) {
                    evidence.add("but another base MAC address");
                }
                return new Claim(mark.ordinal(), device, evidence, otherBoard);
            }
        }
        return byAddress(group, evidence);
    }

    private static boolean shares(Group group, Known device, Mark mark) {
        return group.identity().at(mark).stream().anyMatch(device.identity().at(mark)::contains);
    }

    /** Own devices with the same value, where it proves something. */
    private List<Known> alike(Group group, Mark mark, List<String> evidence) {
        List<Known> alike = new ArrayList<>();
        for (String value : group.identity().at(mark)) {
            int devices = shared.by(mark, value);
            if (devices > 1) {
                evidence.add("its " + mark.word() + " " + value + " is shared by " + devices
                        + " devices and proves nothing");
                continue;
            }
            own.stream()
                    .filter(k -> k.identity().at(mark).contains(value) && !alike.contains(k))
                    .filter(k -> mark != Mark.SERIAL || k.identity().makerFits(group.identity()))
                    .forEach(alike::add);
        }
        return alike;
    }

    private static boolean uncontradicted(Group group, Known device, Mark mark, List<String> evidence) {
        for (Mark stronger : Mark.values()) {
            if (stronger == mark) {
                return true;
            }
            if (group.identity().contradicts(device.identity(), stronger)) {
                evidence.add("same " + mark.word() + " as “" + device.name() + "”, but another " + stronger.word());
                return false;
            }
        }
        return true;
    }

    private Claim byAddress(Group group, List<String> evidence) {
        Known there = own.stream()
                .filter(k -> k.siteId() == siteId && group.isAt(k.host(), k.port()))
                .findFirst()
                .orElse(null);
        if (there == null) {
            return new Claim(ADDRESS, null, evidence, false);
        }
        for (Mark mark : List.of(Mark.SERIAL, Mark.BASE_MAC)) {
            if (group.identity().contradicts(there.identity(), mark)) {
                evidence.add(0, "another " + mark.word() + " than “" + there.name() + "” had when it was last read");
                return new Claim(ADDRESS, there, evidence, true);
            }
        }
        return new Claim(ADDRESS, there, evidence, false);
    }

    private Decision decision(Group group, Claim claim) {
        Known device = claim.device;
        if (device == null) {
            return fresh(group, claim);
        }
        boolean here = device.siteId() == siteId;
        if (claim.doubtful) {
            return doubtful(claim);
        }
        if (here && group.isAt(device.host(), device.port())) {
            return new Decision(
                    Standing.KNOWN, device.deviceId(), "This is “" + device.name() + "”.", claim.evidence, false);
        }
        if (here && isName(device.host())) {
            String reason = "This is “" + device.name() + "”, entered by its host name " + device.host() + ".";
            return new Decision(Standing.KNOWN, device.deviceId(), reason, claim.evidence, false);
        }
        List<String> evidence = new ArrayList<>(claim.evidence);
        occupant(group, device).ifPresent(evidence::add);
        String from = device.host() + (device.port() == group.first().port() ? "" : " port " + device.port());
        return here
                ? new Decision(
                        Standing.NEW_ADDRESS,
                        device.deviceId(),
                        "This is “" + device.name() + "”, which was at " + from + ".",
                        evidence,
                        true)
                : new Decision(
                        Standing.MOVED,
                        device.deviceId(),
                        "This is “" + device.name() + "” of the site “" + device.site() + "”.",
                        evidence,
                        true);
    }

    private static boolean isName(String host) {
        return host.indexOf(':') < 0 && !host.matches("[0-9.]+");
    }

    /** Another device of the site that is entered at the address. */
    private java.util.Optional<String> occupant(Group group, Known device) {
        return own.stream()
                .filter(k -> k.siteId() == siteId && k.deviceId() != device.deviceId())
                .filter(k -> k.host().equals(group.first().host())
                        && k.port() == group.first().port())
                .findFirst()
                .map(k ->
                        "“" + k.name() + "” is entered at this address: it has to get its own new address together with"
                                + " this one, or be changed first");
    }

    private Decision fresh(Group group, Claim claim) {
        List<String> evidence = new ArrayList<>(claim.evidence);
        Set<Mark> elsewhere = java.util.Arrays.stream(Mark.values())
                .filter(mark -> others.stream().anyMatch(k -> shares(group, k, mark)))
                .collect(Collectors.toCollection(java.util.TreeSet::new));
        if (!elsewhere.isEmpty()) {
            String marks = elsewhere.stream().map(Mark::word).collect(Collectors.joining(" and "));
            evidence.add("a device of another customer has the same " + marks + "; it is left as it is");
        }
        return new Decision(Standing.NEW, null, "Nothing of this customer is known to be it.", evidence, true);
    }

    private Decision doubtful(Claim claim) {
        if (claim.rank == ADDRESS) {
            String reason = "“" + claim.device.name() + "” is entered at this address, but another unit answers there."
                    + " If it was replaced, nothing needs doing: rounds go on under that name.";
            return new Decision(Standing.DOUBTFUL, claim.device.deviceId(), reason, claim.evidence, false);
        }
        String reason = "It looks like “" + claim.device.name()
                + "”, but not in everything. Adopting it makes it a new device.";
        return new Decision(Standing.DOUBTFUL, claim.device.deviceId(), reason, claim.evidence, true);
    }

    private static Decision beaten(Claim claim) {
        String reason = "“" + claim.device.name() + "” was recognised, or nearly so, at another address as well."
                + " Adopting this one makes it a new device.";
        return new Decision(Standing.DOUBTFUL, claim.device.deviceId(), reason, claim.evidence, true);
    }
}
