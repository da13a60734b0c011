package org.roundsman.traps;

import io.micrometer.core.instrument.Counter;
import io.micrometer.core.instrument.MeterRegistry;
import java.util.EnumMap;
import java.util.Map;
import org.roundsman.snmp.NotificationRefusal;

/** Counts what becomes of notifications; names begin with {@code roundsman.traps}. */
final class TrapsMeters {

    final Counter received;
    final Counter dropped;
    final Counter repeated;
    final Counter answered;
    final Counter reported;
    final Counter unnamed;
    final Counter summed;
    final Counter lost;
    final Counter stored;
    private final Map<NotificationRefusal, Counter> refused = new EnumMap<>(NotificationRefusal.class);

    TrapsMeters(MeterRegistry registry) {
        received = counter(registry, "received", "Messages that came in at the port of notifications");
        dropped = counter(registry, "dropped", "Messages that were not looked at, since their address sends too many");
        repeated = counter(registry, "repeated", "Notifications that had come before");
        answered = counter(registry, "answered", "Informs that were answered");
        reported = counter(registry, "reported", "Reports of SNMPv3 sent, as its beginning needs them");
        unnamed = counter(registry, "unnamed", "Notifications that no standard and no profile names");
        summed = counter(registry, "summed", "Notifications summed, since their device sends too many");
        lost = counter(registry, "lost", "Notifications that found no place in memory while the database was away");
        stored = counter(registry, "stored", "Notifications put on a timeline one by one");
        for (NotificationRefusal reason : NotificationRefusal.values()) {
            refused.put(
                    reason,
                    Counter.builder("roundsman.traps.refused")
                            .description("Messages that were not let in, by reason")
                            .tag("reason", reason.name())
                            .register(registry));
        }
    }

    Counter refused(NotificationRefusal reason) {
        return refused.get(reason);
    }

    private static Counter counter(MeterRegistry registry, String name, String description) {
        return Counter.builder("roundsman.traps." + name)
                .description(description)
                .register(registry);
    }
}
