package org.roundsman.readings;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Instant;
import java.util.List;
import org.roundsman.measure.Condition;
import org.roundsman.measure.Values;

/**
 * Writes readings of the past as quarter hours and spans, where raw readings never were: for demonstration data and for
 * moving in from elsewhere.
 */
@ApplicationScoped
public class HistoryLoad {

    /**
     * One device in one quarter hour.
     *
     * @param samples how many readings the means stand for, 1 to 900
     * @param device mean figures of the device
     */
    public record DeviceQuarter(
            long deviceId,
            Instant at,
            int samples,
            Values device,
            List<RadioQuarter> radios,
            List<NetworkQuarter> networks) {}

    /** One radio in that quarter hour: mean figures and the highest clients and utilisation. */
    public record RadioQuarter(int number, Values mean, Values max) {}

    /** One network in that quarter hour. */
    public record NetworkQuarter(String ssid, Values mean) {}

    /** A closed span. */
    public record PastSpan(long deviceId, Instant from, Instant to, Condition condition) {}

    /**
     * Stores both in one transaction and rolls the touched sites up; a second load of the same rows changes nothing.
     *
     * @throws IllegalArgumentException for a time that is not a whole quarter hour or not before the first raw reading
     */
    public void load(List<DeviceQuarter> quarters, List<PastSpan> spans) {
        throw new UnsupportedOperationException();
    }
}
