package org.roundsman.web.profiles;

import java.time.Instant;
import java.time.ZoneOffset;
import org.roundsman.web.page.Words;

/** Times on pages that belong to no site. */
final class Times {

    private Times() {}

    static String of(Instant at) {
        return Words.moment(at, ZoneOffset.UTC) + " UTC";
    }
}
