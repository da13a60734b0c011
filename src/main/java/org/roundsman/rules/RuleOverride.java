package org.roundsman.rules;

import java.time.Instant;
import java.util.EnumMap;
import java.util.Map;
import org.roundsman.alarms.AlarmType;

/**
 * Values that people laid over the shipped ones.
 *
 * @param targetId the customer, site, model or device; 0 for all
 * @param targetName its name, for people
 * @param customerId whose it is; 0 for all and for models
 * @param fields only what differs
 * @param reason why, in their words
 * @param version grows with each change: whoever saves says which one they saw
 * @param author who changed it last
 */
public record RuleOverride(
        long id,
        AlarmType type,
        RuleLevel level,
        long targetId,
        String targetName,
        long customerId,
        Map<RuleField, String> fields,
        String reason,
        int version,
        String author,
        Instant at) {

    public RuleOverride {
        fields = fields.isEmpty() ? Map.of() : new EnumMap<>(fields);
    }
}
