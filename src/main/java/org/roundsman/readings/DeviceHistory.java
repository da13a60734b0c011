package org.roundsman.readings;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.roundsman.measure.Metric;
import org.roundsman.measure.Reading;

/** What a device did over time. Callers check the customer scope through {@link FleetBoard#device} first. */
@ApplicationScoped
public class DeviceHistory {

    /** The last reading that answered, from the raw readings that are kept; empty when there is none. */
    public Optional<Reading> lastAnswered(long deviceId) {
        throw new UnsupportedOperationException();
    }

    /** The device's own figure, in quarter hours or, with a longer step, in buckets of whole quarter hours. */
    public Series ofDevice(long deviceId, Metric metric, Instant from, Instant to, Duration step) {
        throw new UnsupportedOperationException();
    }

    /** A radio's figure, in the same way. */
    public Series ofRadio(long deviceId, int number, Metric metric, Instant from, Instant to, Duration step) {
        throw new UnsupportedOperationException();
    }

    /** Clients of one network on this device, in the same way. */
    public Series ofNetwork(long deviceId, String ssid, Instant from, Instant to, Duration step) {
        throw new UnsupportedOperationException();
    }

    /** Spans that overlap the time, ascending, not cut to it. */
    public List<Span> spans(long deviceId, Instant from, Instant to) {
        throw new UnsupportedOperationException();
    }
}
