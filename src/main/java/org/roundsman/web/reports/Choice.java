package org.roundsman.web.reports;

import java.time.YearMonth;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.roundsman.dispatch.ReportState;
import org.roundsman.fleet.Customer;
import org.roundsman.reports.ReportLook;

/** Something to choose in a form. */
record Choice(String value, String name, boolean chosen) {

    /** How far back the chooser of months goes; any other month is reached by its address. */
    private static final int MONTHS = 24;

    private static Choice of(String value, String name, String chosen) {
        return new Choice(value, name, value.equals(chosen));
    }

    static List<Choice> customers(List<Customer> all, String chosen) {
        return all.stream()
                .map(one -> of(String.valueOf(one.id), one.name, chosen))
                .toList();
    }

    /** Languages by their English names, with their own name beside. */
    static List<Choice> languages(List<Locale> all, String chosen) {
        return all.stream()
                .map(one -> of(one.toLanguageTag(), languageName(one), chosen))
                .toList();
    }

    static String languageName(Locale language) {
        String name = language.getDisplayName(Locale.ENGLISH);
        String own = language.getDisplayName(language);
        return name.equals(own) ? name : name + " (" + own + ")";
    }

    static List<Choice> papers(String chosen) {
        return Arrays.stream(ReportLook.PaperSize.values())
                .map(one -> of(one.name(), paperName(one), chosen))
                .toList();
    }

    static String paperName(ReportLook.PaperSize paper) {
        return paper == ReportLook.PaperSize.A4 ? "A4" : "Letter";
    }

    static List<Choice> states(String chosen) {
        return Arrays.stream(ReportState.values())
                .map(one -> of(StateWord.of(one).key(), one.word(), chosen))
                .toList();
    }

    /** The months up to that one, the newest first; with the chosen one, wherever it lies. */
    static List<Choice> months(YearMonth newest, String chosen) {
        List<Choice> all = new ArrayList<>();
        for (int i = 0; i < MONTHS; i++) {
            YearMonth month = newest.minusMonths(i);
            all.add(of(month.toString(), Periods.month(month), chosen));
        }
        Asked.month(chosen)
                .filter(month -> all.stream().noneMatch(Choice::chosen))
                .ifPresent(month -> all.add(of(month.toString(), Periods.month(month), chosen)));
        return all;
    }
}
