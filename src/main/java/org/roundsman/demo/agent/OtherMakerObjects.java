package org.roundsman.demo.agent;

import java.time.Duration;
import org.roundsman.demo.Band;
import org.roundsman.demo.DemoDevice;
import org.roundsman.demo.DemoRadio;
import org.roundsman.demo.model.Counters;

/**
 * The objects of the second invented maker, Gorsehill Instruments: the same facts as the first one's, in other places,
 * units and words, so that a profile for them has to be thought about.
 */
final class OtherMakerObjects {

    private static final String OWN = "1.3.6.1.4.1.32473.9.2.";
    private static final String UNIT = OWN + "1.";
    private static final String RADIO = OWN + "2.1.";
    private static final String NETWORK = OWN + "3.1.";
    private static final int PER_MILLE = 1000;

    private OtherMakerObjects() {}

    static void add(Shape.Builder shape, DemoDevice device, int networks) {
        shape.add(UNIT + 1, "0", (s, out) -> SystemObjects.text(out, s.serial()));
        shape.add(UNIT + 2, "0", (s, out) -> SystemObjects.text(out, MakerObjects.firmware(s)));
        shape.add(UNIT + 3, "0", (s, out) -> out.unsigned32(Tags.GAUGE32, s.figures.cpu));
        shape.add(UNIT + 4, "0", (s, out) -> out.unsigned32(Tags.GAUGE32, 100L - s.figures.memory));
        shape.add(
                UNIT + 5,
                "0",
                (s, out) -> out.unsigned32(
                        Tags.GAUGE32, Duration.ofMillis(s.upMillis()).toHours()));
        for (DemoRadio radio : device.radios()) {
            addRadio(shape, radio.number() - 1);
            addNetworks(shape, radio.number() - 1, networks);
        }
    }

    /** Utilisation comes in thousandths, the band in megahertz, and the power in whole dBm. */
    private static void addRadio(Shape.Builder shape, int r) {
        String i = Integer.toString(r + 1);
        shape.add(RADIO + 1, i, (s, out) -> SystemObjects.text(out, "wlan" + r));
        shape.add(
                RADIO + 2,
                i,
                (s, out) -> out.integer(
                        Tags.INTEGER, megahertz(MakerObjects.radio(s, r).band())));
        shape.add(RADIO + 3, i, (s, out) -> out.integer(Tags.INTEGER, MakerObjects.channel(s, r)));
        shape.add(RADIO + 4, i, (s, out) -> out.unsigned32(Tags.GAUGE32, s.figures.clients[r]));
        shape.add(RADIO + 5, i, (s, out) -> {
            if (s.figures.on[r]) {
                out.unsigned32(Tags.GAUGE32, s.figures.utilisation[r] * (long) PER_MILLE / 255);
            }
        });
        shape.add(RADIO + 6, i, (s, out) -> {
            if (s.figures.on[r]) {
                out.integer(Tags.INTEGER, s.figures.noise[r]);
            }
        });
        shape.add(
                RADIO + 7,
                i,
                (s, out) -> out.integer(Tags.INTEGER, MakerObjects.radio(s, r).powerTenths() / 10));
        shape.add(RADIO + 8, i, (s, out) -> out.unsigned32(Tags.COUNTER32, s.counters.count(Counters.frames(r))));
        shape.add(RADIO + 9, i, (s, out) -> out.unsigned32(Tags.COUNTER32, s.counters.count(Counters.retried(r))));
    }

    private static void addNetworks(Shape.Builder shape, int r, int networks) {
        for (int n = 0; n < networks; n++) {
            int place = n;
            String i = (r + 1) + "." + (n + 1);
            shape.add(NETWORK + 1, i, (s, out) -> out.string(Tags.OCTET_STRING, s.ssids[place]));
            shape.add(
                    NETWORK + 2, i, (s, out) -> out.unsigned32(Tags.GAUGE32, MakerObjects.networkClients(s, r, place)));
        }
    }

    private static int megahertz(Band band) {
        return switch (band) {
            case BAND_24 -> 2400;
            case BAND_5 -> 5000;
            case BAND_6 -> 6000;
        };
    }
}
