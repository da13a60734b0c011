package org.roundsman.web.device;

import java.util.List;
import org.roundsman.fleet.DeviceFacts;
import org.roundsman.measure.Metric;
import org.roundsman.measure.RadioReading;
import org.roundsman.measure.Values;
import org.roundsman.web.page.Words;

/** One radio's last reading as it is shown. */
record RadioLine(
        int number,
        String label,
        String mac,
        String band,
        String channel,
        String width,
        String power,
        String noise,
        String clients,
        String utilisation,
        String retries) {

    static List<RadioLine> of(List<RadioReading> radios, List<DeviceFacts.NamedRadio> named) {
        return radios.stream().map(radio -> of(radio, named)).toList();
    }

    private static RadioLine of(RadioReading radio, List<DeviceFacts.NamedRadio> named) {
        DeviceFacts.NamedRadio name = named.stream()
                .filter(one -> one.number() == radio.number())
                .findFirst()
                .orElse(new DeviceFacts.NamedRadio(radio.number(), "", ""));
        Values values = radio.values();
        return new RadioLine(
                radio.number(),
                name.label(),
                name.mac(),
                shown(values, Metric.BAND, 1),
                shown(values, Metric.CHANNEL, 0),
                shown(values, Metric.WIDTH, 0),
                shown(values, Metric.TX_POWER, 1),
                shown(values, Metric.NOISE, 0),
                shown(values, Metric.RADIO_CLIENTS, 0),
                shown(values, Metric.UTILISATION, 0),
                shown(values, Metric.RETRIES, 1));
    }

    private static String shown(Values values, Metric metric, int decimals) {
        return Words.figure(values.get(metric), decimals, metric.unit().symbol());
    }
}
