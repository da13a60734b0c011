package org.roundsman.fleet;

import java.math.BigDecimal;
import java.util.Currency;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * What one piece costs, without tax.
 *
 * @param amount null where not known
 * @param currency ISO 4217 code, empty without an amount
 */
public record ListPrice(BigDecimal amount, String currency) {

    /** Not known. */
    public static final ListPrice NONE = new ListPrice(null, "");

    private static final Set<String> CURRENCIES = Currency.getAvailableCurrencies().stream()
            .map(Currency::getCurrencyCode)
            .collect(Collectors.toUnmodifiableSet());

    private static final BigDecimal MOST = BigDecimal.valueOf(1_000_000_000);

    /**
     * @param price the field of the amount
     * @param code the field of the currency
     */
    void check(InputCheck check, String price, String code) {
        boolean priced = amount != null;
        check.that(code, !priced || !currency.isEmpty(), "a price needs its currency, such as EUR");
        check.that(code, priced || currency.isEmpty(), "a currency without a price says nothing; leave it empty");
        boolean known = currency.isEmpty() || CURRENCIES.contains(currency);
        check.that(code, known, "no currency code of ISO 4217; write three capital letters, such as EUR");
        boolean money = !known || currency.isEmpty() || isMoney(currency);
        check.that(
                code,
                money,
                "stands for no money in ISO 4217, but for a metal, a test or the like; write the code of a currency, such"
                        + " as EUR");
        if (priced) {
            check.that(price, amount.signum() >= 0 && amount.compareTo(MOST) < 0, "from 0 to 999999999.99");
            int decimals = known && !currency.isEmpty() ? decimals(currency) : 2;
            check.that(
                    price,
                    amount.stripTrailingZeros().scale() <= decimals,
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

    /** Codes to which no minor unit applies (ISO 4217, list one) are no money: metals, units of account, tests, none at all. */
    private static boolean isMoney(String currency) {
        return Currency.getInstance(currency).getDefaultFractionDigits() >= 0;
    }

    /** Decimals of the currency's minor unit (ISO 4217); 2 for codes without one, such as gold. */
    private static int decimals(String currency) {
        int digits = Currency.getInstance(currency).getDefaultFractionDigits();
        return digits < 0 ? 2 : digits;
    }
}
