package org.roundsman.topology.find;

import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.Set;
import org.roundsman.fleet.DeviceKind;
import org.roundsman.topology.Attachment;
import org.roundsman.topology.ChassisId;
import org.roundsman.topology.NeighbourSeen;
import org.roundsman.topology.Port;
import org.roundsman.topology.PortState;
import org.roundsman.topology.TableFixture;

/** An invented site whose wiring tests write down as evidence. Device n has the address 00:00:5e:00:53:n. */
final class Site {

    static final Instant FIRST = Instant.parse("2026-11-25T08:00:00Z");
    static final Instant LAST = Instant.parse("2026-11-25T20:00:00Z");

    private final Map<Long, Member> members = new LinkedHashMap<>();
    private final Map<String, Integer> macs = new LinkedHashMap<>();
    private final List<NeighbourSeen> neighbours = new ArrayList<>();
    private final List<Evidence.Learnt> learnt = new ArrayList<>();
    private final List<Evidence.Word> words = new ArrayList<>();

    static String mac(long device) {
        return String.format("00:00:5e:00:53:%02x", device);
    }

    Site gateway(long id) {
        return member(id, DeviceKind.GATEWAY, "gw-" + id, "gw-" + id);
    }

    Site bridge(long id) {
        return member(id, DeviceKind.NETWORK_SWITCH, "sw-" + id, "sw-" + id);
    }

    Site point(long id) {
        return member(id, DeviceKind.ACCESS_POINT, "ap-" + id, "ap-" + id);
    }

    Site point(long id, String systemName) {
        return member(id, DeviceKind.ACCESS_POINT, "ap-" + id, systemName);
    }

    private Site member(long id, DeviceKind kind, String name, String systemName) {
        members.put(
                id,
                new Member(
                        id,
                        kind,
                        name,
                        "192.0.2." + id,
                        systemName,
                        Optional.of(new ChassisId(4, TableFixture.octets(mac(id)))),
                        Set.of(mac(id)),
                        List.of()));
        return this;
    }

    /** It hears the other on that port, by MAC addresses. */
    Site hears(long device, int port, long other) {
        return hears(device, port, other, FIRST, 0);
    }

    Site hears(long device, int port, long other, Instant first, int missed) {
        byte[] id = TableFixture.octets(mac(other));
        return hears(device, port, announced(4, id, 3, id, "", List.of()), first, missed);
    }

    Site hears(long device, int port, NeighbourSeen.Announced announced, Instant first, int missed) {
        neighbours.add(new NeighbourSeen(device, port, port, "interface number", announced, first, LAST, missed));
        return this;
    }

    static NeighbourSeen.Announced announced(
            int chassisKind, byte[] chassis, int portKind, byte[] port, String name, List<String> addresses) {
        return new NeighbourSeen.Announced(chassisKind, chassis, portKind, port, "", name, "", 0, addresses);
    }

    /** Both hear each other. */
    Site cable(long one, int port, long other, int otherPort) {
        return hears(one, port, other).hears(other, otherPort, one);
    }

    Site learns(long device, int port, long... others) {
        for (long other : others) {
            learnt.add(new Evidence.Learnt(device, mac(other), port, FIRST, LAST, 0));
        }
        return this;
    }

    Site learnt(long device, int port, long other, int missed) {
        learnt.add(new Evidence.Learnt(device, mac(other), port, FIRST, LAST, missed));
        return this;
    }

    /** How many addresses a port learnt in all. */
    Site addresses(long device, int port, int count) {
        macs.put(device + ":" + port, count);
        return this;
    }

    Site said(long device, long parent, int port) {
        words.add(new Evidence.Word(device, parent, OptionalInt.of(port), "" + port, "edda", LAST));
        return this;
    }

    Map<Long, Attachment> places() {
        return Finding.places(evidence());
    }

    Evidence evidence() {
        List<Member> all = members.values().stream()
                .map(m -> new Member(
                        m.id(), m.kind(), m.name(), m.host(), m.systemName(), m.chassis(), m.macs(), ports(m.id())))
                .toList();
        return new Evidence(all, neighbours, learnt, words, 3, 64);
    }

    private List<Port> ports(long device) {
        List<Port> ports = new ArrayList<>();
        for (int n = 1; n <= 24; n++) {
            ports.add(new Port(
                    n,
                    "" + n,
                    "",
                    "",
                    "",
                    Port.ETHERNET,
                    OptionalInt.of(n),
                    OptionalLong.empty(),
                    PortState.UP,
                    macs.getOrDefault(device + ":" + n, 1),
                    Optional.empty(),
                    true));
        }
        return ports;
    }
}
