package org.roundsman.rules;

/**
 * What a rule is applied to; 0 where there is none, such as the model of a device whose model is not known, or everything
 * for the service itself.
 */
public record RuleTarget(long customerId, long siteId, long modelId, long deviceId) {

    /** The service itself: only values for all hold there. */
    public static RuleTarget service() {
        return new RuleTarget(0, 0, 0, 0);
    }

    /** A site as a whole. */
    public static RuleTarget site(long customerId, long siteId) {
        return new RuleTarget(customerId, siteId, 0, 0);
    }

    /** The id that counts at that level, 0 where there is none. */
    public long idAt(RuleLevel level) {
        return switch (level) {
            case ALL -> 0;
            case MODEL -> modelId;
            case CUSTOMER -> customerId;
            case SITE -> siteId;
            case DEVICE -> deviceId;
        };
    }
}
