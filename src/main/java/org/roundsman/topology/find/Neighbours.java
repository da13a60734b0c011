package org.roundsman.topology.find;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.roundsman.topology.ChassisId;
import org.roundsman.topology.LldpId;
import org.roundsman.topology.NeighbourSeen.Announced;

/**
 * Which device of the site an LLDP neighbour is. By its chassis, then its port's MAC address, then a management address,
 * then its system name: the first that exactly one device has decides, one that several have decides nothing.
 */
final class Neighbours {

    /** By what a neighbour was recognised, the strongest first. */
    enum By {
        CHASSIS,
        PORT_MAC,
        ADDRESS,
        SYSTEM_NAME
    }

    /**
     * What was found.
     *
     * @param device empty when it is none of the site's, or cannot be told
     * @param by what decided; meaningless without a device
     * @param reason in words
     * @param notes what is odd: a name that several have, marks that point to different devices
     * @param suspects devices that those notes are about
     */
    record Match(Optional<Member> device, By by, String reason, List<String> notes, Set<Long> suspects) {}

    private final Map<String, Set<Member>> byMac = new LinkedHashMap<>();
    private final Map<ChassisId, Set<Member>> byChassis = new LinkedHashMap<>();
    private final Map<String, Set<Member>> byAddress = new LinkedHashMap<>();
    private final Map<String, Set<Member>> byName = new LinkedHashMap<>();

    Neighbours(List<Member> members) {
        for (Member member : members) {
            member.macs().forEach(mac -> put(byMac, mac, member));
            member.chassis().ifPresent(id -> put(byChassis, id, member));
            put(byAddress, low(member.host()), member);
            names(member).forEach(name -> put(byName, name, member));
        }
    }

    private static <K> void put(Map<K, Set<Member>> map, K key, Member member) {
        map.computeIfAbsent(key, made -> new LinkedHashSet<>()).add(member);
    }

    private static Set<String> names(Member member) {
        Set<String> names = new LinkedHashSet<>();
        names.add(low(member.systemName()));
        names.add(low(member.name()));
        names.add(low(member.host()));
        names.remove("");
        return names;
    }

    private static String low(String text) {
        return text.strip().toLowerCase(Locale.ROOT);
    }

    Match match(Announced neighbour) {
        Map<By, Set<Member>> found = new LinkedHashMap<>();
        found.put(By.CHASSIS, ofChassis(neighbour));
        found.put(By.PORT_MAC, ofMac(neighbour.portOf().mac()));
        found.put(By.ADDRESS, ofAddresses(neighbour));
        found.put(By.SYSTEM_NAME, byName.getOrDefault(low(neighbour.systemName()), Set.of()));
        List<String> notes = new ArrayList<>();
        Set<Long> suspects = new LinkedHashSet<>();
        Member chosen = null;
        By by = By.SYSTEM_NAME;
        for (Map.Entry<By, Set<Member>> entry : found.entrySet()) {
            Set<Member> fits = entry.getValue();
            if (chosen == null && fits.size() == 1) {
                chosen = fits.iterator().next();
                by = entry.getKey();
            } else if (!fits.isEmpty() && (chosen == null || !fits.contains(chosen))) {
                notes.add(odd(entry.getKey(), neighbour, fits, chosen));
                fits.forEach(member -> suspects.add(member.id()));
            }
        }
        return new Match(Optional.ofNullable(chosen), by, mark(by, neighbour), notes, suspects);
    }

    private Set<Member> ofChassis(Announced neighbour) {
        Set<Member> fits =
                byChassis.getOrDefault(new ChassisId(neighbour.chassisKind(), neighbour.chassisId()), Set.of());
        return fits.isEmpty() ? ofMac(neighbour.chassis().mac()) : fits;
    }

    private Set<Member> ofMac(Optional<String> mac) {
        return mac.map(byMac::get).orElse(Set.of());
    }

    private Set<Member> ofAddresses(Announced neighbour) {
        Set<Member> fits = new LinkedHashSet<>();
        neighbour.addresses().forEach(address -> fits.addAll(byAddress.getOrDefault(low(address), Set.of())));
        neighbour.chassis().address().ifPresent(address -> fits.addAll(byAddress.getOrDefault(low(address), Set.of())));
        return fits;
    }

    private static String odd(By by, Announced neighbour, Set<Member> fits, Member chosen) {
        String names = fits.stream().map(Member::name).sorted().collect(Collectors.joining(", "));
        String what = mark(by, neighbour);
        if (fits.size() > 1) {
            return what + " is that of several devices (" + names + ") and decides nothing";
        }
        return what + " is that of " + names + (chosen == null ? "" : ", not of " + chosen.name());
    }

    private static String mark(By by, Announced neighbour) {
        return switch (by) {
            case CHASSIS -> "chassis identifier " + neighbour.chassis().words();
            case PORT_MAC -> "port identifier " + neighbour.portOf().words();
            case ADDRESS ->
                "management address "
                        + (neighbour.addresses().isEmpty()
                                ? neighbour.chassis().text()
                                : String.join(" or ", neighbour.addresses()));
            case SYSTEM_NAME -> "system name “" + neighbour.systemName() + "”";
        };
    }

    /** Which port of the device a neighbour's port identifier names; empty where none, or several. */
    static Optional<Integer> portNamed(Member device, Announced neighbour) {
        LldpId id = neighbour.portOf();
        List<Integer> fits = device.ports().stream()
                .filter(port -> switch (id.what()) {
                    case MAC -> id.text().equals(port.mac());
                    case INTERFACE_NAME, LOCAL ->
                        id.text().equals(port.name()) || id.text().equals(port.description());
                    case INTERFACE_ALIAS -> id.text().equals(port.alias());
                    default -> false;
                })
                .map(org.roundsman.topology.Port::number)
                .toList();
        if (fits.size() == 1) {
            return Optional.of(fits.get(0));
        }
        List<Integer> described = device.ports().stream()
                .filter(port -> !neighbour.portText().isEmpty()
                        && (neighbour.portText().equals(port.description())
                                || neighbour.portText().equals(port.name())))
                .map(org.roundsman.topology.Port::number)
                .toList();
        return described.size() == 1 ? Optional.of(described.get(0)) : Optional.empty();
    }
}
