package org.roundsman.demo.agent;

import java.time.Instant;
import java.time.ZoneOffset;
import java.time.ZonedDateTime;
import org.roundsman.demo.DemoDevice;
import org.roundsman.demo.DemoNetwork;
import org.roundsman.demo.DemoRadio;
import org.roundsman.demo.Fault;
import org.roundsman.demo.model.Counters;
import org.roundsman.fleet.DeviceKind;

/** The invented maker's own objects, under the enterprise number that RFC 5612 keeps for documentation. */
final class MakerObjects {

    static final String HARDWARE_REVISION = "B";
    private static final String OWN = "1.3.6.1.4.1.32473.2.";
    /** Running 1, stands still 2. */
    static final String FAN = OWN + "2.5";

    private static final String RADIO = OWN + "3.1.1.";
    /** Channel of a radio, by its number. */
    static final String CHANNEL = RADIO + 4;

    private static final String NETWORK = OWN + "4.1.1.";
    private static final int ON = 1;
    private static final int OFF = 2;

    private MakerObjects() {}

    static void add(Shape.Builder shape, DemoDevice device, int networks) {
        addUnit(shape);
        int uplink = Port.uplinkIndex(device);
        shape.add(OWN + "2.4", "0", (s, out) -> out.integer(Tags.INTEGER, uplink));
        if (device.kind() == DeviceKind.NETWORK_SWITCH) {
            shape.add(FAN, "0", (s, out) -> out.integer(Tags.INTEGER, Fault.FAN_FAILED.in(s.faults()) ? OFF : ON));
        }
        for (DemoRadio radio : device.radios()) {
            addRadio(shape, radio.number() - 1);
            addRadioFigures(shape, radio.number() - 1);
            addNetworks(shape, radio.number() - 1, networks);
            addNetwork(shape, radio.number() + "." + (networks + 1), Fault.NETWORK_ADDED, DemoNetwork.ADDED);
            addNetwork(shape, radio.number() + "." + (networks + 2), Fault.SETUP_NETWORK, DemoNetwork.SETUP);
        }
    }

    private static void addUnit(Shape.Builder shape) {
        shape.add(OWN + "1.1", "0", (s, out) -> SystemObjects.text(out, s.serial()));
        shape.add(
                OWN + "1.2",
                "0",
                (s, out) -> SystemObjects.text(out, s.device.model().label()));
        shape.add(OWN + "1.3", "0", (s, out) -> SystemObjects.text(out, firmware(s)));
        shape.add(OWN + "1.4", "0", (s, out) -> SystemObjects.text(out, HARDWARE_REVISION));
        shape.add(OWN + "1.5", "0", (s, out) -> out.string(Tags.OCTET_STRING, InterfaceObjects.mac(s.device.mac())));
        shape.add(OWN + "2.1", "0", (s, out) -> out.unsigned32(Tags.GAUGE32, s.figures.cpu));
        shape.add(OWN + "2.2", "0", (s, out) -> out.unsigned32(Tags.GAUGE32, s.figures.memory));
        shape.add(OWN + "2.3", "0", (s, out) -> out.string(Tags.OCTET_STRING, dateAndTime(s)));
    }

    private static void addRadio(Shape.Builder shape, int r) {
        String i = Integer.toString(r + 1);
        shape.add(RADIO + 1, i, (s, out) -> SystemObjects.text(out, radio(s, r).label()));
        shape.add(
                RADIO + 2,
                i,
                (s, out) -> out.string(
                        Tags.OCTET_STRING, InterfaceObjects.mac(radio(s, r).mac())));
        shape.add(
                RADIO + 3,
                i,
                (s, out) -> out.integer(Tags.INTEGER, radio(s, r).band().code()));
        shape.add(RADIO + 4, i, (s, out) -> out.integer(Tags.INTEGER, channel(s, r)));
        shape.add(
                RADIO + 5, i, (s, out) -> out.integer(Tags.INTEGER, radio(s, r).width()));
        shape.add(
                RADIO + 6, i, (s, out) -> out.integer(Tags.INTEGER, radio(s, r).powerTenths()));
    }

    /** A radio that is off measures nothing: it has no noise and no utilisation, not even zero. */
    private static void addRadioFigures(Shape.Builder shape, int r) {
        String i = Integer.toString(r + 1);
        shape.add(RADIO + 7, i, (s, out) -> {
            if (s.figures.on[r]) {
                out.integer(Tags.INTEGER, s.figures.noise[r]);
            }
        });
        shape.add(RADIO + 8, i, (s, out) -> out.unsigned32(Tags.GAUGE32, s.figures.clients[r]));
        shape.add(RADIO + 9, i, (s, out) -> {
            if (s.figures.on[r]) {
                out.integer(Tags.INTEGER, s.figures.utilisation[r]);
            }
        });
        shape.add(RADIO + 10, i, (s, out) -> out.unsigned32(Tags.COUNTER32, s.counters.count(Counters.frames(r))));
        shape.add(RADIO + 11, i, (s, out) -> out.unsigned32(Tags.COUNTER32, s.counters.count(Counters.retried(r))));
        shape.add(RADIO + 12, i, (s, out) -> out.integer(Tags.INTEGER, s.figures.on[r] ? ON : OFF));
    }

    /** The second network of a site is its guests'. */
    private static void addNetworks(Shape.Builder shape, int r, int networks) {
        for (int n = 0; n < networks; n++) {
            int place = n;
            String i = (r + 1) + "." + (n + 1);
            boolean last = n == networks - 1;
            shape.add(NETWORK + 1, i, (s, out) -> {
                if (!last || !Fault.NETWORK_REMOVED.in(s.faults())) {
                    out.string(Tags.OCTET_STRING, s.ssids[place]);
                }
            });
            shape.add(NETWORK + 2, i, (s, out) -> {
                if (!last || !Fault.NETWORK_REMOVED.in(s.faults())) {
                    out.unsigned32(Tags.GAUGE32, networkClients(s, r, place));
                }
            });
        }
    }

    /** Nobody has found a network that has just come. */
    private static void addNetwork(Shape.Builder shape, String row, Fault fault, String ssid) {
        shape.add(NETWORK + 1, row, (s, out) -> {
            if (fault.in(s.faults())) {
                SystemObjects.text(out, ssid);
            }
        });
        shape.add(NETWORK + 2, row, (s, out) -> {
            if (fault.in(s.faults())) {
                out.unsigned32(Tags.GAUGE32, 0);
            }
        });
    }

    static int networkClients(AgentState state, int radio, int network) {
        int guests = state.figures.guests[radio];
        return network == 1 ? guests : state.figures.clients[radio] - guests;
    }

    static int channel(AgentState state, int radio) {
        return radio(state, radio).channelUnder(state.faults());
    }

    static DemoRadio radio(AgentState state, int radio) {
        return state.device.radios().get(radio);
    }

    static String firmware(AgentState state) {
        if (Fault.FIRMWARE_UPDATED.in(state.faults())) {
            return state.device.model().nextFirmware();
        }
        boolean stale = Fault.FIRMWARE_STALE.in(state.faults());
        return stale
                ? state.device.model().staleFirmware()
                : state.device.model().currentFirmware();
    }

    /** DateAndTime of RFC 2579, eleven octets, in UTC. */
    private static byte[] dateAndTime(AgentState state) {
        long clock = Fault.CLOCK_1970.in(state.faults()) ? state.upMillis() : state.now();
        ZonedDateTime at = Instant.ofEpochMilli(clock).atZone(ZoneOffset.UTC);
        return new byte[] {
            (byte) (at.getYear() >> 8),
            (byte) at.getYear(),
            (byte) at.getMonthValue(),
            (byte) at.getDayOfMonth(),
            (byte) at.getHour(),
            (byte) at.getMinute(),
            (byte) at.getSecond(),
            (byte) (at.getNano() / 100_000_000),
            '+',
            0,
            0
        };
    }
}
