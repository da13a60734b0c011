package org.roundsman.web.reports;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import org.roundsman.system.MinuteBrake;

/** Bounds how often one network address opens links to reports, right ones or wrong ones: nobody signs in for them. Thread-safe. */
@ApplicationScoped
class LinkBrake {

    /** Requests of one network address within a minute. */
    static final int ALLOWED = 60;

    private final MinuteBrake brake;

    LinkBrake(Clock clock) {
        this.brake = new MinuteBrake(clock);
    }

    /**
     * Counts a request.
     *
     * @param network address that it came from
     * @return seconds to wait; 0 when it may be answered
     */
    long waits(String network) {
        return brake.waits(network, ALLOWED);
    }
}
