package org.roundsman.web.profiles;

import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/** Times on pages that belong to no site. */
final class Times {

    private static final DateTimeFormatter MINUTE = DateTimeFormatter.ofPattern(
                    "d MMM yyyy, HH:mm 'UTC'", Locale.ENGLISH)
            .withZone(ZoneOffset.UTC);

    private Times() {}

    static String of(Instant at) {
        return MINUTE.format(at);
    }
}
