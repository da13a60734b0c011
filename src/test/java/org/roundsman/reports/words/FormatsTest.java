package org.roundsman.reports.words;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.text.NumberFormat;
import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.YearMonth;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.time.format.FormatStyle;
import java.time.format.TextStyle;
import java.util.Currency;
import java.util.Locale;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** Figures and dates against java.text and java.time, which bring a CLDR of their own, and against values of the CLDR by hand. */
class FormatsTest {

    private static final ZoneId BERLIN = ZoneId.of("Europe/Berlin");

    static Stream<Locale> locales() {
        return Stream.of(Locale.UK, Locale.GERMANY, Locale.FRANCE);
    }

    private static Formats of(Locale locale) {
        return new Formats(locale.toLanguageTag());
    }

    @ParameterizedTest
    @MethodSource("locales")
    void sharesAreNeverRoundedUp(Locale locale) {
        NumberFormat percent = NumberFormat.getPercentInstance(locale);
        percent.setMaximumFractionDigits(2);
        percent.setRoundingMode(RoundingMode.DOWN);
        percent.setMinimumFractionDigits(2);
        for (double share : new double[] {0, 0.5, 0.99, 0.9975, 0.998765, 0.99996}) {
            assertThat(of(locale).share(share)).isEqualTo(percent.format(share));
        }
        percent.setMinimumFractionDigits(0);
        assertThat(of(locale).share(1)).isEqualTo(percent.format(1));
        percent.setMaximumFractionDigits(0);
        assertThat(of(locale).coarse(0.819)).isEqualTo(percent.format(0.819)).contains("81");
    }

    @ParameterizedTest
    @MethodSource("locales")
    void figuresInPercentAreRounded(Locale locale) {
        NumberFormat percent = NumberFormat.getPercentInstance(locale);
        percent.setMaximumFractionDigits(1);
        assertThat(of(locale).percent(78.4375, 1)).isEqualTo(percent.format(0.784375));
    }

    @ParameterizedTest
    @MethodSource("locales")
    void numbersAreGrouped(Locale locale) {
        NumberFormat number = NumberFormat.getInstance(locale);
        number.setMaximumFractionDigits(1);
        assertThat(of(locale).number(12345.67)).isEqualTo(number.format(12345.67));
        assertThat(of(locale).whole(12345.67))
                .isEqualTo(NumberFormat.getIntegerInstance(locale).format(12345.67));
    }

    @ParameterizedTest
    @MethodSource("locales")
    void moneyStandsAsTheLanguageWritesIt(Locale locale) {
        NumberFormat euro = NumberFormat.getCurrencyInstance(locale);
        euro.setCurrency(Currency.getInstance("EUR"));
        TreeMap<String, BigDecimal> sums = new TreeMap<>();
        sums.put("EUR", new BigDecimal("12345.50"));
        assertThat(of(locale).money(sums)).isEqualTo(euro.format(12345.5));
        sums.put("CHF", new BigDecimal("10.00"));
        assertThat(of(locale).money(sums)).contains("CHF").contains(euro.format(12345.5));
    }

    @ParameterizedTest
    @MethodSource("locales")
    void daysAndMonths(Locale locale) {
        LocalDate day = LocalDate.of(2026, 10, 25);
        DateTimeFormatter written =
                DateTimeFormatter.ofLocalizedDate(FormatStyle.LONG).withLocale(locale);
        assertThat(of(locale).day(day)).isEqualTo(written.format(day));
        assertThat(of(locale).month(YearMonth.of(2026, 10)))
                .isEqualTo(
                        YearMonth.of(2026, 10).getMonth().getDisplayName(TextStyle.FULL_STANDALONE, locale) + " 2026");
        for (DayOfWeek weekday : DayOfWeek.values()) {
            assertThat(of(locale).weekdayInFull(weekday))
                    .isEqualTo(weekday.getDisplayName(TextStyle.FULL_STANDALONE, locale));
        }
    }

    /** Units and their plural forms as in the CLDR, main/en, de and fr, units: short and long. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "en-GB | 43  | 43 sec          | 43 seconds",
                "en-GB | 60  | 1 min           | 1 minute",
                "en-GB | 5700 | 1 hr, 35 mins  | 1 hour, 35 minutes",
                "de-DE | 43  | 43 Sek.         | 43 Sekunden",
                "de-DE | 60  | 1 Min.          | 1 Minute",
                "de-DE | 5700 | 1 Std., 35 Min. | 1 Stunde, 35 Minuten",
                "fr-FR | 43  | 43 s            | 43 secondes",
                "fr-FR | 60  | 1 min           | 1 minute",
                "fr-FR | 5700 | 1 h et 35 min   | 1 heure et 35 minutes",
            })
    void stretchesOfTime(String tag, long seconds, String brief, String spelt) {
        Formats formats = new Formats(tag);
        assertThat(formats.time(Duration.ofSeconds(seconds)).replaceAll("[\\u00a0\\u202f]", " "))
                .startsWith(brief);
        assertThat(formats.speltTime(Duration.ofSeconds(seconds)).replaceAll("[\\u00a0\\u202f]", " "))
                .isEqualTo(spelt);
    }

    /** Berlin put its clocks back at 2026-10-25T01:00Z: 2:30 was there twice. */
    @Test
    void theHourThatComesTwiceSaysWhich() {
        Formats formats = new Formats("en-GB");
        assertThat(formats.moment(Instant.parse("2026-10-25T00:30:00Z"), BERLIN))
                .contains("25 Oct")
                .contains("02:30")
                .endsWith("(UTC+02:00)");
        assertThat(formats.moment(Instant.parse("2026-10-25T01:30:00Z"), BERLIN))
                .endsWith("(UTC+01:00)");
        assertThat(formats.moment(Instant.parse("2026-10-25T03:30:00Z"), BERLIN))
                .endsWith("04:30");
    }
}
