package org.roundsman.reports.words;

import com.ibm.icu.number.LocalizedNumberFormatter;
import com.ibm.icu.number.NumberFormatter;
import com.ibm.icu.number.Precision;
import com.ibm.icu.number.Scale;
import com.ibm.icu.text.DateFormat;
import com.ibm.icu.text.DateFormatSymbols;
import com.ibm.icu.text.ListFormatter;
import com.ibm.icu.text.MeasureFormat;
import com.ibm.icu.util.Currency;
import com.ibm.icu.util.Measure;
import com.ibm.icu.util.MeasureUnit;
import com.ibm.icu.util.TimeZone;
import com.ibm.icu.util.ULocale;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.YearMonth;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.Date;
import java.util.List;
import java.util.SortedMap;

/** Figures, times and money as a language writes them, by the Unicode CLDR. Thread-safe. */
public final class Formats {

    private final LocalizedNumberFormatter plain;
    private final LocalizedNumberFormatter percent;
    private final MeasureFormat brief;
    private final MeasureFormat spelt;
    private final ListFormatter lists;
    private final DateFormat day;
    private final DateFormat shortDay;
    private final DateFormat dayAndMonth;
    private final DateFormat month;
    private final DateFormat moment;
    private final DateFormat dated;
    private final DateFormat clock;
    private final String[] weekdays;
    private final String[] longWeekdays;

    /** @param tag BCP 47, such as {@code en-GB} */
    Formats(String tag) {
        ULocale locale = ULocale.forLanguageTag(tag);
        plain = NumberFormatter.withLocale(locale);
        percent = plain.unit(MeasureUnit.PERCENT).scale(Scale.powerOfTen(2));
        brief = MeasureFormat.getInstance(locale, MeasureFormat.FormatWidth.SHORT);
        spelt = MeasureFormat.getInstance(locale, MeasureFormat.FormatWidth.WIDE);
        lists = ListFormatter.getInstance(locale);
        day = dates("yMMMMd", locale);
        shortDay = dates("yMMMd", locale);
        dayAndMonth = dates("MMMd", locale);
        month = dates("yMMMM", locale);
        moment = dates("EEEMMMdjm", locale);
        dated = dates("yMMMdjm", locale);
        clock = dates("jm", locale);
        DateFormatSymbols symbols = new DateFormatSymbols(locale);
        weekdays = symbols.getWeekdays(DateFormatSymbols.STANDALONE, DateFormatSymbols.SHORT);
        longWeekdays = symbols.getWeekdays(DateFormatSymbols.STANDALONE, DateFormatSymbols.WIDE);
    }

    /** Moments are turned into the clock of their place first, so that only one set of time zones counts, which is Java's. */
    private static DateFormat dates(String skeleton, ULocale locale) {
        DateFormat format = DateFormat.getInstanceForSkeleton(skeleton, locale);
        format.setTimeZone(TimeZone.GMT_ZONE);
        return format;
    }

    /** A share from 0 to 1 in percent, at most two decimals. Never rounded up: 99.996 % is not 100 %. */
    public String share(double share) {
        Precision decimals = share >= 1 ? Precision.integer() : Precision.fixedFraction(2);
        return percent.precision(decimals)
                .roundingMode(RoundingMode.DOWN)
                .format(share)
                .toString();
    }

    /** A share from 0 to 1 in whole percent, never rounded up. */
    public String coarse(double share) {
        return percent.precision(Precision.integer())
                .roundingMode(RoundingMode.DOWN)
                .format(share)
                .toString();
    }

    /** A share from 0 to 1 in percent without the sign, at most one decimal, never rounded up; for small places. */
    public String bareShare(double share) {
        return plain.scale(Scale.powerOfTen(2))
                .precision(Precision.maxFraction(1))
                .roundingMode(RoundingMode.DOWN)
                .format(share)
                .toString();
    }

    /** A figure that is in percent already, at most {@code decimals} decimals. */
    public String percent(double figure, int decimals) {
        return plain.unit(MeasureUnit.PERCENT)
                .precision(Precision.maxFraction(decimals))
                .roundingMode(RoundingMode.HALF_EVEN)
                .format(figure)
                .toString();
    }

    /** A number without decimals. */
    public String whole(double figure) {
        return plain.precision(Precision.integer())
                .roundingMode(RoundingMode.HALF_EVEN)
                .format(figure)
                .toString();
    }

    /** A number with at most one decimal. */
    public String number(double figure) {
        return plain.precision(Precision.maxFraction(1))
                .roundingMode(RoundingMode.HALF_EVEN)
                .format(figure)
                .toString();
    }

    /** Hours and minutes with short units; below a minute in seconds. */
    public String time(Duration time) {
        return brief.formatMeasures(measures(time));
    }

    /** Hours and minutes with units in full. */
    public String speltTime(Duration time) {
        return spelt.formatMeasures(measures(time));
    }

    private static Measure[] measures(Duration time) {
        long seconds = time.plusMillis(500).toSeconds();
        if (seconds > 0 && seconds < 60) {
            return new Measure[] {new Measure(seconds, MeasureUnit.SECOND)};
        }
        long minutes = time.plusSeconds(30).toMinutes();
        List<Measure> parts = new ArrayList<>();
        if (minutes >= 60) {
            parts.add(new Measure(minutes / 60, MeasureUnit.HOUR));
        }
        if (minutes % 60 > 0 || parts.isEmpty()) {
            parts.add(new Measure(minutes % 60, MeasureUnit.MINUTE));
        }
        return parts.toArray(Measure[]::new);
    }

    public String day(LocalDate date) {
        return written(day, date.atStartOfDay());
    }

    public String shortDay(LocalDate date) {
        return written(shortDay, date.atStartOfDay());
    }

    public String dayAndMonth(LocalDate date) {
        return written(dayAndMonth, date.atStartOfDay());
    }

    public String month(YearMonth of) {
        return written(month, of.atDay(1).atStartOfDay());
    }

    /** Weekday, day and time by the clock of the zone; with the offset in the hour that comes twice. */
    public String moment(Instant at, ZoneId zone) {
        ZonedDateTime there = at.atZone(zone);
        String text = written(moment, there.toLocalDateTime());
        boolean twice = zone.getRules().getValidOffsets(there.toLocalDateTime()).size() > 1;
        String offset = there.getOffset().getTotalSeconds() == 0
                ? ""
                : there.getOffset().toString();
        return twice ? text + " (UTC" + offset + ")" : text;
    }

    /** Day, year and time in UTC, without saying so. */
    public String utc(Instant at) {
        return written(dated, LocalDateTime.ofInstant(at, ZoneOffset.UTC));
    }

    /** A full hour by the clock. */
    public String hour(int hour) {
        return written(clock, LocalDate.EPOCH.atTime(LocalTime.of(hour, 0)));
    }

    /** As short as a column needs. */
    public String weekday(DayOfWeek day) {
        return weekdays[day.getValue() % 7 + 1];
    }

    public String weekdayInFull(DayOfWeek day) {
        return longWeekdays[day.getValue() % 7 + 1];
    }

    /** Sums side by side: currencies are never added up together. */
    public String money(SortedMap<String, BigDecimal> sums) {
        List<String> texts = new ArrayList<>();
        sums.forEach((code, sum) ->
                texts.add(plain.unit(Currency.getInstance(code)).format(sum).toString()));
        return list(texts);
    }

    public String list(List<String> parts) {
        return lists.format(parts);
    }

    private static String written(DateFormat format, LocalDateTime at) {
        DateFormat own = (DateFormat) format.clone();
        return own.format(Date.from(at.toInstant(ZoneOffset.UTC)));
    }
}
