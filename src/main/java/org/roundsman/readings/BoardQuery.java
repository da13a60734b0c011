package org.roundsman.readings;

import java.util.Optional;
import java.util.Set;
import org.roundsman.fleet.DeviceKind;
import org.roundsman.measure.Condition;

/**
 * What to show on the fleet view, cut by the server.
 *
 * @param search words that all must occur in the customer's, site's or device's name, address, serial or host; blank = all
 * @param customerId one customer, or empty
 * @param siteId one site, or empty
 * @param kind one kind of device, or empty; ignored for sites
 * @param conditions only devices in one of these (for sites: sites with at least one such device); empty = all
 * @param sort column to order by
 * @param descending direction
 * @param page page number, from 1
 * @param size rows a page, 1 to 500
 * @param only only these devices (for sites: sites with at least one of them); absent = all
 */
public record BoardQuery(
        String search,
        Optional<Long> customerId,
        Optional<Long> siteId,
        Optional<DeviceKind> kind,
        Set<Condition> conditions,
        Sort sort,
        boolean descending,
        int page,
        int size,
        Optional<Set<Long>> only) {

    /** Columns that can order a list. */
    public enum Sort {
        /** Trouble first: silent and refusing before the rest, the longest first. */
        TROUBLE,
        NAME,
        CUSTOMER,
        CLIENTS,
        UTILISATION,
        SINCE
    }

    public BoardQuery {
        conditions = Set.copyOf(conditions);
        only = only.map(Set::copyOf);
        if (page < 1 || size < 1 || size > 500) {
            throw new IllegalArgumentException("page " + page + " of size " + size);
        }
    }

    /** Of all devices. */
    public BoardQuery(
            String search,
            Optional<Long> customerId,
            Optional<Long> siteId,
            Optional<DeviceKind> kind,
            Set<Condition> conditions,
            Sort sort,
            boolean descending,
            int page,
            int size) {
        this(search, customerId, siteId, kind, conditions, sort, descending, page, size, Optional.empty());
    }

    /** The same of these devices only. */
    public BoardQuery only(Set<Long> deviceIds) {
        return new BoardQuery(
                search, customerId, siteId, kind, conditions, sort, descending, page, size, Optional.of(deviceIds));
    }

    public static BoardQuery first() {
        return new BoardQuery(
                "", Optional.empty(), Optional.empty(), Optional.empty(), Set.of(), Sort.TROUBLE, false, 1, 25);
    }
}
