package org.roundsman.alarms;

/**
 * What makes two signals speak of the same alarm (RFC 8632: resource, alarm-type-id, alarm-type-qualifier).
 *
 * @param qualifier tells alarms of one type and resource apart, such as the SSID of an open network; mostly empty
 */
public record AlarmKey(AlarmType type, Resource resource, String qualifier) {

    public AlarmKey {
        if (type.resource() != resource.kind()) {
            throw new IllegalArgumentException(type + " is not raised of a " + resource.kind());
        }
    }

    public static AlarmKey of(AlarmType type, Resource resource) {
        return new AlarmKey(type, resource, "");
    }
}
