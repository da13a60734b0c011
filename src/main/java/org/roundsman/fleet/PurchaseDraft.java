package org.roundsman.fleet;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Currency;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

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

    private static final Set<String> CURRENCIES = Currency.getAvailableCurrencies().stream()
            .map(Currency::getCurrencyCode)
            .collect(Collectors.toUnmodifiableSet());

    /** No wireless network is older, and a year beyond is a typing error. */
    private static final int FIRST_YEAR = 1990;

    private static final int LAST_YEAR = 2100;
    private static final BigDecimal MOST = BigDecimal.valueOf(1_000_000_000);

    /** What is wrong with it by itself, by field; empty when nothing is. What else the fleet holds is not looked at. */
    public Map<String, String> faults() {
        InputCheck check = new InputCheck();
        check(check);
        return check.faults();
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
        checkPrice(check);
    }

    private static void checkDay(InputCheck check, String field, LocalDate day) {
        boolean likely = day == null || day.getYear() >= FIRST_YEAR && day.getYear() <= LAST_YEAR;
        check.that(field, likely, "a year from " + FIRST_YEAR + " to " + LAST_YEAR);
    }

    private void checkPrice(InputCheck check) {
        boolean priced = price != null;
        check.that("currency", !priced || !currency.isEmpty(), "a price needs its currency, such as EUR");
        check.that("currency", priced || currency.isEmpty(), "a currency without a price says nothing; leave it empty");
        boolean known = currency.isEmpty() || CURRENCIES.contains(currency);
        check.that("currency", known, "no currency code of ISO 4217; write three capital letters, such as EUR");
        if (priced) {
            check.that("price", price.signum() >= 0 && price.compareTo(MOST) < 0, "from 0 to 999999999.99");
            int decimals = known && !currency.isEmpty() ? decimals(currency) : 2;
            check.that(
                    "price",
                    price.stripTrailingZeros().scale() <= decimals,
                    String.format(Locale.ROOT, "at most %d decimals in this currency", decimals));
        }
    }

    /** The amount with the decimals that its currency usually has: 189.9 EUR is 189.90. Null stays null. */
    public static BigDecimal usual(BigDecimal amount, String currency) {
        if (amount == null || !CURRENCIES.contains(currency)) {
            return amount;
        }
        BigDecimal shortest = amount.stripTrailingZeros();
        return shortest.scale() < decimals(currency) ? shortest.setScale(decimals(currency)) : shortest;
    }

    /** Decimals of the currency's minor unit (ISO 4217); 2 for codes without one, such as gold. */
    private static int decimals(String currency) {
        int digits = Currency.getInstance(currency).getDefaultFractionDigits();
        return digits < 0 ? 2 : digits;
    }
}
