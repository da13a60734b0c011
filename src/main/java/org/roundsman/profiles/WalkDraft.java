package org.roundsman.profiles;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.roundsman.snmp.Walk;

/**
 * A walk to be kept.
 *
 * @param customerId whose it is, empty for nobody's in particular
 * @param deviceId the device it was read from, empty where it came as text
 * @param blank take sysContact, sysName and sysLocation out
 * @param remarks what was odd about it
 */
public record WalkDraft(
        String name,
        Optional<Long> customerId,
        Optional<Long> deviceId,
        boolean blank,
        Walk walk,
        Instant takenAt,
        List<String> remarks) {}
