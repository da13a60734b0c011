package org.roundsman.web.alarms;

import org.roundsman.alarms.AlarmType;
import org.roundsman.alarms.Resource;

/** One kind of alarm in the inventory. */
record TypeLine(String id, String title, String event, String resource, String meaning, String advice) {

    static TypeLine of(AlarmType type) {
        return new TypeLine(
                type.id(), type.title(), type.event().word(), word(type.resource()), type.meaning(), type.advice());
    }

    private static String word(Resource.Kind kind) {
        return switch (kind) {
            case SERVICE -> "Roundsman itself";
            case SITE -> "site";
            case DEVICE -> "device";
        };
    }
}
