package org.roundsman.readings;

import java.time.Instant;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * One site on the fleet view.
 *
 * @param accessPoints how many access points the site has
 * @param answering access points that answer now
 * @param silent access points silent now
 * @param refusing access points that reject our credentials now
 * @param unwatched access points that nobody looks at now
 * @param otherDevices switches and gateways of the site
 * @param otherTrouble of those, how many are silent or refusing
 * @param troubleSince start of the earliest silent or refusing span that goes on, of any device
 * @param clients sum over answering access points, empty when none said so
 */
public record SiteRow(
        long siteId,
        String site,
        long customerId,
        String customer,
        String timeZone,
        int accessPoints,
        int answering,
        int silent,
        int refusing,
        int unwatched,
        int otherDevices,
        int otherTrouble,
        Optional<Instant> troubleSince,
        OptionalInt clients,
        Optional<BusiestRadio> busiest,
        Ribbon ribbon) {

    /** The same with another ribbon. */
    public SiteRow with(Ribbon with) {
        return new SiteRow(
                siteId,
                site,
                customerId,
                customer,
                timeZone,
                accessPoints,
                answering,
                silent,
                refusing,
                unwatched,
                otherDevices,
                otherTrouble,
                troubleSince,
                clients,
                busiest,
                with);
    }
}
