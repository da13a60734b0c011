package org.roundsman.demo.model;

import java.util.List;
import org.roundsman.demo.Band;
import org.roundsman.demo.DemoDevice;
import org.roundsman.demo.DemoFleet;
import org.roundsman.demo.DemoRadio;
import org.roundsman.demo.DemoSite;
import org.roundsman.demo.Fault;

/**
 * How one device is used: a pure function of the fleet's seed, the device, the time and the faults in force. Keeps only
 * scratch space; one thread at a time.
 */
public final class Usage {

    private static final double[][] BAND_SHARES = {{}, {1}, {0.3, 0.7}, {0.2, 0.5, 0.3}};
    /** Air time that one client takes, and that neighbours take, by band. */
    private static final double[] PER_CLIENT = {0, 0.022, 0.011, 0.006};

    private static final double[] NEIGHBOURS = {0, 0.34, 0.10, 0.02};
    private static final double MEAN_FRAME_OCTETS = 620;
    private static final int MANY_CLIENTS = 80;
    /** Frames a second without which a share of retries would mean little. */
    private static final double MANY_FRAMES = 60;

    private static final double MANY_RETRIES = 0.45;
    /** 25 a second, as per 1000 seconds. */
    private static final long MANY_ERRORS = 25_000;

    private final DemoDevice device;
    private final Rhythm rhythm;
    private final LocalWeek week;
    private final long siteKey;
    private final long key;
    private final double people;
    private final int saturable;
    private final Figures middle;

    public Usage(DemoFleet fleet, DemoDevice device) {
        DemoSite site = fleet.siteOf(device);
        this.device = device;
        this.rhythm = Rhythm.of(site.kind());
        this.week = new LocalWeek(site.zone());
        this.siteKey = Lot.key(fleet.seed(), 400, site.number());
        this.key = Lot.key(fleet.seed(), 401, device.number());
        this.people = device.isAccessPoint()
                ? device.peak()
                : site.devices().stream().mapToInt(DemoDevice::peak).sum();
        this.saturable = saturable(device.radios());
        this.middle = new Figures(device.radios().size());
    }

    /** The radio that most clients would like to use. */
    private static int saturable(List<DemoRadio> radios) {
        for (int i = 0; i < radios.size(); i++) {
            if (radios.get(i).band() == Band.BAND_5) {
                return i;
            }
        }
        return 0;
    }

    /** What the device shows at that time under those faults. */
    public void show(long epochMilli, int faults, Figures out) {
        double x = epochMilli / 1000.0;
        double full = rhythm.at(week.secondOfWeek(epochMilli));
        double crowd = people * full * (0.8 + 0.4 * Lot.smooth(siteKey, x / 86_400));
        for (int radio = 0; radio < out.on.length; radio++) {
            showRadio(radio, x, full, crowd, faults, out);
        }
        double busy = device.isAccessPoint() ? out.allClients() * 0.5 : crowd * 0.08;
        int cpu = (int) Math.min(97, Math.round(6 + busy + 16 * Lot.smooth(key + 1, x / 600)));
        int memory = (int) Math.min(96, Math.round(38 + busy * 0.4 + 14 * Lot.smooth(key + 2, x / 30_000)));
        out.cpu = Fault.CPU_BUSY.in(faults) ? Math.max(96, cpu) : cpu;
        out.memory = Fault.MEMORY_SHORT.in(faults) ? Math.max(95, memory) : memory;
        out.portSpeed = Fault.PORT_SLOW.in(faults) ? 100 : 1000;
    }

    private void showRadio(int radio, double x, double full, double crowd, int faults, Figures out) {
        long own = Lot.key(key, radio);
        out.on[radio] = radio > 0 || !Fault.RADIO_OFF.in(faults);
        if (!out.on[radio]) {
            out.clients[radio] = 0;
            out.guests[radio] = 0;
            out.utilisation[radio] = 0;
            out.noise[radio] = 0;
            return;
        }
        boolean saturated = radio == saturable && Fault.ROOM_SATURATED.in(faults);
        double expected = crowd * BAND_SHARES[out.on.length][radio] * (0.65 + 0.7 * Lot.smooth(own, x / 2400));
        out.clients[radio] = (int) Math.round(saturated ? expected * 1.5 : expected);
        if (radio == saturable && Fault.CLIENTS_MANY.in(faults)) {
            out.clients[radio] += MANY_CLIENTS;
        }
        double guests = rhythm.guests() * (0.85 + 0.3 * Lot.smooth(own + 1, x / 5000));
        out.guests[radio] = (int) Math.round(out.clients[radio] * Math.min(1, guests));
        if (Fault.NETWORK_REMOVED.in(faults)) {
            out.clients[radio] -= out.guests[radio];
            out.guests[radio] = 0;
        }
        int usual = utilisation(own, radio, x, full, out.clients[radio]);
        int least = radio == saturable ? leastUtilisation(own, x, faults) : 0;
        out.utilisation[radio] = Math.max(usual, least);
        out.noise[radio] = noiseFloor(radio, own) + (int) Math.round(5 * Lot.smooth(own + 3, x / 5400));
    }

    /** Own clients and neighbours fill the air; the fuller it is, the less each adds. */
    private int utilisation(long own, int radio, double x, double full, int clients) {
        int band = device.radios().get(radio).band().code();
        double neighbours = NEIGHBOURS[band] * (0.35 + 0.65 * full) * (0.5 + Lot.smooth(own + 4, x / 1700));
        double load = neighbours + clients * PER_CLIENT[band] * (0.5 + Lot.smooth(own + 5, x / 800));
        return (int) Math.round(255 * (1 - Math.exp(-load)) * 0.9);
    }

    /** What a fault that fills the channel makes of it at the least, in 255ths; 0 without one. */
    private static int leastUtilisation(long own, double x, int faults) {
        double wave = Lot.smooth(own + 2, x / 1100);
        double percent = 0;
        if (Fault.ROOM_SATURATED.in(faults)) {
            percent = 88 + 9 * wave;
        } else if (Fault.CHANNEL_BUSY.in(faults)) {
            percent = 74 + 4 * wave;
        } else if (Fault.CHANNEL_HALF.in(faults)) {
            percent = 54 + 4 * wave;
        }
        return (int) Math.round(2.55 * percent);
    }

    private int noiseFloor(int radio, long own) {
        int floor = device.radios().get(radio).band() == Band.BAND_24 ? -94 : -97;
        return floor + Lot.below(own + 6, 4);
    }

    /**
     * What the counters gain from that quarter hour on until it ends: rates are constant in a quarter hour.
     *
     * @param quarter quarter hours since 1970
     * @param gains set by this: octets per second at {@link Counters#OCTETS_IN} and {@link Counters#OCTETS_OUT},
     *     everything else per 1000 seconds
     */
    public void gains(long quarter, int faults, long[] gains) {
        long epochMilli = quarter * Counters.QUARTER_MILLIS + Counters.QUARTER_MILLIS / 2;
        double x = epochMilli / 1000.0;
        show(epochMilli, faults, middle);
        double octets = device.isAccessPoint() ? radioGains(x, faults, gains) : trunkOctets(epochMilli, x);
        gains[Counters.OCTETS_IN] = Math.round(40 + octets);
        gains[Counters.OCTETS_OUT] = Math.round(40 + octets * (0.12 + 0.2 * Lot.smooth(key + 3, x / 4000)));
        boolean faulty = Fault.PORT_SLOW.in(faults) || Lot.unit(key + 4) < 0.04;
        long few = faulty ? Math.round(800 * Lot.smooth(key + 5, x / 3600)) : 0;
        gains[Counters.ERRORS] = Fault.PORT_ERRORS.in(faults) ? MANY_ERRORS : few;
    }

    private double radioGains(double x, int faults, long[] gains) {
        double octets = 0;
        for (int radio = 0; radio < middle.on.length; radio++) {
            long own = Lot.key(key, radio);
            double frames =
                    middle.on[radio] ? 0.4 + middle.clients[radio] * (4 + 26 * Lot.smooth(own + 7, x / 1900)) : 0;
            double busy = middle.utilisation[radio] / 255.0;
            double again = 0.02 + 0.3 * busy * busy + 0.05 * Lot.smooth(own + 8, x / 2600);
            if (middle.on[radio] && radio == saturable && Fault.RETRIES_MANY.in(faults)) {
                frames += MANY_FRAMES;
                again = MANY_RETRIES;
            }
            gains[Counters.frames(radio)] = Math.round(1000 * frames);
            gains[Counters.retried(radio)] = Math.round(1000 * frames * again);
            octets += frames * MEAN_FRAME_OCTETS;
        }
        return octets;
    }

    private double trunkOctets(long epochMilli, double x) {
        double full = rhythm.at(week.secondOfWeek(epochMilli));
        return people * full * MEAN_FRAME_OCTETS * (6 + 18 * Lot.smooth(siteKey + 1, x / 2600));
    }
}
