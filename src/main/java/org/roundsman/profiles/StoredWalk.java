package org.roundsman.profiles;

import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * A walk that is kept, without its variables.
 *
 * @param customerId whose device it is from; empty for nobody's in particular
 * @param customer that customer's name, or empty
 * @param deviceId the device it was read from, empty where it came as text
 * @param objectId the device's sysObjectID, or empty
 * @param blanked sysContact, sysName and sysLocation were taken out
 * @param remarks what was odd when it came in
 * @param takenAt as well as it is known
 * @param laterAt when the second walk of the same device was taken, if there is one
 * @param testCase whether it is a test case
 */
public record StoredWalk(
        long id,
        Optional<Long> customerId,
        String customer,
        Optional<Long> deviceId,
        String name,
        String objectId,
        int variables,
        boolean blanked,
        List<String> remarks,
        Instant takenAt,
        Optional<Instant> laterAt,
        String author,
        boolean testCase) {}
