package org.roundsman.fleet;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Map;

/**
 * What was bought, as entered: one piece by its serial number.
 *
 * @param serial as the maker wrote it; unique per customer without regard to case
 * @param siteId where it is, null where not known
 * @param deviceId what it is polled as, null where not known; a device of that site
 * @param boughtOn null where not known, as the other dates
 * @param price of this one piece, null where not known
 * @param currency ISO 4217 code, empty without a price
 */
public record PurchaseDraft(
        String serial,
        Long siteId,
        Long deviceId,
        String supplier,
        String orderNumber,
        String invoiceNumber,
        LocalDate boughtOn,
        LocalDate deliveredOn,
        LocalDate installedOn,
        BigDecimal price,
        String currency,
        String note) {

    /** No wireless network is older, and a year beyond is a typing error. */
    private static final int FIRST_YEAR = 1990;

    private static final int LAST_YEAR = 2100;

    /** What is wrong with it by itself, by field; empty when nothing is. What else the fleet holds is not looked at. */
    public Map<String, String> faults() {
        InputCheck check = new InputCheck();
        check(check);
        return check.faults();
    }

    /**
     * The same, and days that are hardly meant. What is ordered comes within a year; a day beyond is a slip of the pen, and
     * would cover the unit until then.
     *
     * @param today by the calendar in UTC
     */
    public Map<String, String> faults(LocalDate today) {
        InputCheck check = new InputCheck();
        check(check);
        LocalDate last = today.plusYears(1);
        checkFar(check, "boughtOn", boughtOn, last);
        checkFar(check, "deliveredOn", deliveredOn, last);
        checkFar(check, "installedOn", installedOn, last);
        return check.faults();
    }

    private static void checkFar(InputCheck check, String field, LocalDate day, LocalDate last) {
        boolean near = day == null || !day.isAfter(last);
        check.that(field, near, "this day is more than a year ahead; look for a slip of the pen");
    }

    void check(InputCheck check) {
        check.text("serial", serial, 1, 120);
        check.text("supplier", supplier, 0, 120);
        check.text("orderNumber", orderNumber, 0, 60);
        check.text("invoiceNumber", invoiceNumber, 0, 60);
        check.text("note", note, 0, 2000);
        checkDay(check, "boughtOn", boughtOn);
        checkDay(check, "deliveredOn", deliveredOn);
        checkDay(check, "installedOn", installedOn);
        new ListPrice(price, currency).check(check, "price", "currency");
    }

    static void checkDay(InputCheck check, String field, LocalDate day) {
        boolean likely = day == null || day.getYear() >= FIRST_YEAR && day.getYear() <= LAST_YEAR;
        check.that(field, likely, "a year from " + FIRST_YEAR + " to " + LAST_YEAR);
    }

    /** The amount with the decimals that its currency usually has: 189.9 EUR is 189.90. Null stays null. */
    public static BigDecimal usual(BigDecimal amount, String currency) {
        return ListPrice.usual(amount, currency);
    }
}
