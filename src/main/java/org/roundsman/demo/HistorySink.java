package org.roundsman.demo;

import java.time.Instant;
import java.util.List;
import org.roundsman.measure.Condition;
import org.roundsman.measure.Values;

/**
 * Port: where the invented past goes. Devices are known here by their number in the fleet. A second load of the same rows
 * must change nothing, since a back-fill that was cut short loads its last day again.
 */
@FunctionalInterface
public interface HistorySink {

    /**
     * Spans come before the quarter hours of the same time, and alone.
     *
     * @param quarters whole quarter hours before the service's first start
     * @param spans closed spans; those of one device touch
     */
    void load(List<DeviceQuarter> quarters, List<PastSpan> spans);

    /**
     * One device in one quarter hour.
     *
     * @param device number in the fleet
     * @param at start of the quarter hour
     * @param samples how many moments the means stand for
     * @param figures means of the device
     */
    record DeviceQuarter(
            int device,
            Instant at,
            int samples,
            Values figures,
            List<RadioQuarter> radios,
            List<NetworkQuarter> networks) {}

    /** One radio in that quarter hour: means, and the highest clients and utilisation. */
    record RadioQuarter(int number, Values mean, Values max) {}

    /** One network in that quarter hour. */
    record NetworkQuarter(String ssid, Values mean) {}

    /** A closed span of a device. */
    record PastSpan(int device, Instant from, Instant to, Condition condition) {}
}
