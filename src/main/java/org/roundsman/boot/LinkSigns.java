package org.roundsman.boot;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Inject;
import java.util.Set;
import org.roundsman.topology.WiringReads;
import org.roundsman.traps.NotificationReceived;

/** Has the wiring of a device read when the device itself says that it started or that a link of it changed. */
@ApplicationScoped
class LinkSigns {

    /** coldStart, warmStart, linkDown and linkUp (RFC 3418, RFC 2863). */
    private static final Set<String> SIGNS =
            Set.of("1.3.6.1.6.3.1.1.5.1", "1.3.6.1.6.3.1.1.5.2", "1.3.6.1.6.3.1.1.5.3", "1.3.6.1.6.3.1.1.5.4");

    private final WiringReads reads;

    @Inject
    LinkSigns(WiringReads reads) {
        this.reads = reads;
    }

    void heard(@Observes NotificationReceived notification) {
        if (SIGNS.contains(notification.oid())) {
            reads.readSoon(notification.deviceId());
        }
    }
}
