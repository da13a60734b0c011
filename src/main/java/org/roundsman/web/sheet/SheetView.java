package org.roundsman.web.sheet;

import java.util.List;

/**
 * A visit sheet in words.
 *
 * @param title what is wrong
 * @param made when it was made, in the site's time
 * @param where address, getting in, hours
 * @param fault what is seen
 * @param evidence what the cause was found by
 * @param since what has changed after the cause was found, so that the evidence does not hold any more; or empty
 * @param more what is left out of the others, or empty
 * @param cautions what can hurt
 * @param done who did what so far
 */
record SheetView(
        long alarmId,
        String title,
        String site,
        String customer,
        String made,
        List<Row> where,
        List<Contact> contacts,
        List<Row> fault,
        List<String> evidence,
        String since,
        List<UnitView> units,
        List<Other> others,
        String more,
        List<String> bring,
        List<String> cautions,
        List<String> done) {

    /** A name and what stands beside it. */
    record Row(String name, String value) {}

    /**
     * Somebody to call.
     *
     * @param tel the phone number as an address (RFC 3966), or empty
     */
    record Contact(String name, String duty, String phone, String tel, String email) {}

    /**
     * A device to look at.
     *
     * @param facts what it is and where
     * @param readings the last ones, of which {@code read} says when
     */
    record UnitView(String name, List<Row> facts, String read, List<Row> readings) {}

    /** Another device that is concerned. */
    record Other(String name, String kind, String place, String model, String host) {}
}
