package org.roundsman.demo.past;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.roundsman.demo.DemoDevice;
import org.roundsman.demo.DemoNetwork;
import org.roundsman.demo.HistorySink.DeviceQuarter;
import org.roundsman.demo.HistorySink.NetworkQuarter;
import org.roundsman.demo.HistorySink.RadioQuarter;
import org.roundsman.demo.model.Counters;
import org.roundsman.demo.model.Figures;
import org.roundsman.measure.Metric;
import org.roundsman.measure.Subject;
import org.roundsman.measure.Values;

/** Gathers the samples of one quarter hour of one device. One thread at a time. */
final class QuarterMeans {

    private final DemoDevice device;
    private final List<DemoNetwork> networks;
    private final RadioSums[] radios;
    private final long[] gains;
    private int samples;
    private long cpu;
    private long memory;
    private long clients;
    private long guests;

    /** Sums of one radio; those of noise and utilisation count only while it is on. */
    private static final class RadioSums {
        int on;
        long noise;
        long clients;
        long utilisation;
        int mostClients;
        int mostUtilisation;
    }

    QuarterMeans(DemoDevice device, List<DemoNetwork> networks) {
        this.device = device;
        this.networks = networks;
        this.radios = new RadioSums[device.radios().size()];
        this.gains = new long[Counters.frames(radios.length)];
    }

    void clear() {
        samples = 0;
        cpu = 0;
        memory = 0;
        clients = 0;
        guests = 0;
        for (int i = 0; i < radios.length; i++) {
            radios[i] = new RadioSums();
        }
    }

    int samples() {
        return samples;
    }

    /** What the counters gain in the quarter hour, to be filled in. */
    long[] gains() {
        return gains;
    }

    void add(Figures figures) {
        samples++;
        cpu += figures.cpu;
        memory += figures.memory;
        for (int i = 0; i < radios.length; i++) {
            addRadio(radios[i], figures, i);
        }
    }

    private void addRadio(RadioSums sums, Figures figures, int i) {
        clients += figures.clients[i];
        guests += figures.guests[i];
        sums.clients += figures.clients[i];
        sums.mostClients = Math.max(sums.mostClients, figures.clients[i]);
        if (figures.on[i]) {
            sums.on++;
            sums.noise += figures.noise[i];
            sums.utilisation += figures.utilisation[i];
            sums.mostUtilisation = Math.max(sums.mostUtilisation, figures.utilisation[i]);
        }
    }

    DeviceQuarter quarter(Instant at) {
        List<RadioQuarter> radioQuarters = new ArrayList<>();
        for (int i = 0; i < radios.length; i++) {
            radioQuarters.add(radioQuarter(i));
        }
        return new DeviceQuarter(device.number(), at, samples, deviceMeans(), radioQuarters, networkQuarters());
    }

    private Values deviceMeans() {
        Values.Builder values = Values.builder(Subject.DEVICE)
                .set(Metric.CPU, mean(cpu, samples))
                .set(Metric.MEMORY, mean(memory, samples))
                .set(Metric.PORT_IN, 8.0 * gains[Counters.OCTETS_IN])
                .set(Metric.PORT_OUT, 8.0 * gains[Counters.OCTETS_OUT])
                .set(Metric.PORT_ERRORS, gains[Counters.ERRORS] / 1000.0);
        if (device.isAccessPoint()) {
            values.set(Metric.CLIENTS, mean(clients, samples));
        }
        return values.build();
    }

    private RadioQuarter radioQuarter(int i) {
        RadioSums sums = radios[i];
        double frames = gains[Counters.frames(i)];
        Values mean = Values.builder(Subject.RADIO)
                .set(Metric.NOISE, mean(sums.noise, sums.on))
                .set(Metric.RADIO_CLIENTS, mean(sums.clients, samples))
                .set(Metric.UTILISATION, percent(mean(sums.utilisation, sums.on)))
                .set(Metric.RETRIES, frames > 0 ? 100 * gains[Counters.retried(i)] / frames : Double.NaN)
                .build();
        Values max = Values.builder(Subject.RADIO)
                .set(Metric.RADIO_CLIENTS, sums.mostClients)
                .set(Metric.UTILISATION, sums.on > 0 ? percent(sums.mostUtilisation) : Double.NaN)
                .build();
        return new RadioQuarter(device.radios().get(i).number(), mean, max);
    }

    private List<NetworkQuarter> networkQuarters() {
        List<NetworkQuarter> quarters = new ArrayList<>();
        for (DemoNetwork network : device.isAccessPoint() ? networks : List.<DemoNetwork>of()) {
            long sum = network.purpose().equals("guest") ? guests : clients - guests;
            Values mean = Values.builder(Subject.NETWORK)
                    .set(Metric.NETWORK_CLIENTS, mean(sum, samples))
                    .build();
            quarters.add(new NetworkQuarter(network.ssid(), mean));
        }
        return quarters;
    }

    /** NaN, which is missing, where nothing was counted. */
    private static double mean(long sum, int count) {
        return count == 0 ? Double.NaN : (double) sum / count;
    }

    private static double percent(double of255) {
        return of255 / 255 * 100;
    }
}
