package org.roundsman.alarms;

import java.util.OptionalInt;

/**
 * Who would be there now: the median clients of the same hour of the week over the last four weeks.
 *
 * @param staff on networks for staff; empty where there is no past to tell from
 * @param guest on networks for guests
 * @param other on other networks, and clients whose network is not known
 * @param devices access points that are affected
 * @param serviceHours whether the site needs its Wi-Fi at this time
 */
public record Impact(OptionalInt staff, OptionalInt guest, OptionalInt other, int devices, boolean serviceHours) {

    /** Nothing is known of clients. */
    public static Impact unknown(int devices, boolean serviceHours) {
        return new Impact(OptionalInt.empty(), OptionalInt.empty(), OptionalInt.empty(), devices, serviceHours);
    }

    /** All clients together; empty where none of the three is known. */
    public OptionalInt clients() {
        boolean known = staff.isPresent() || guest.isPresent() || other.isPresent();
        return known ? OptionalInt.of(staff.orElse(0) + guest.orElse(0) + other.orElse(0)) : OptionalInt.empty();
    }
}
