package org.roundsman.web.reports;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jboss.resteasy.reactive.RestForm;
import org.roundsman.dispatch.KeptReport;
import org.roundsman.reports.ReportLook;

/**
 * What the forms beside a report send. The remark goes along with every button near it, so that nothing typed is lost.
 *
 * @param remark as typed; null where the form has no such field
 * @param was the remark when the page was made
 * @param then {@code next} to go on with the next report
 * @param costs {@code yes} to show list prices
 * @param recipients mail addresses to send it to once more
 * @param days for how long a link opens it
 * @param why a mail came back
 */
record ReviewForm(
        @RestForm String remark,
        @RestForm String was,
        @RestForm String then,
        @RestForm String language,
        @RestForm String paper,
        @RestForm String costs,
        @RestForm String recipients,
        @RestForm String days,
        @RestForm String why) {

    /** As a page shows it before anybody enters something. */
    static ReviewForm of(KeptReport report, List<String> recipients) {
        return new ReviewForm(
                report.remark(),
                report.remark(),
                "",
                report.language().toLanguageTag(),
                report.paper().name(),
                report.costs() ? "yes" : "",
                String.join("\n", recipients),
                "30",
                "");
    }

    /** What was entered, over what the page would show without it. */
    ReviewForm over(ReviewForm shown) {
        return new ReviewForm(
                or(remark, shown.remark),
                or(was, shown.was),
                "",
                or(language, shown.language),
                or(paper, shown.paper),
                language == null ? shown.costs : Asked.text(costs),
                or(recipients, shown.recipients),
                or(days, shown.days),
                or(why, shown.why));
    }

    private static String or(String entered, String otherwise) {
        return entered == null ? otherwise : entered;
    }

    /** The remark, where somebody typed in it. A page that was left open does not bring back an old one. */
    Optional<String> changedRemark() {
        String typed = Asked.lines(remark);
        return remark == null || typed.equals(Asked.lines(was)) ? Optional.empty() : Optional.of(typed);
    }

    boolean goesOn() {
        return Asked.text(then).equals("next");
    }

    /** One of those, or nothing. */
    Optional<Locale> languageOf(List<Locale> languages) {
        return languages.stream()
                .filter(one -> one.toLanguageTag().equals(Asked.text(language)))
                .findFirst();
    }

    Optional<ReportLook.PaperSize> paperSize() {
        return Papers.find(paper);
    }

    public boolean showsCosts() {
        return Asked.ticked(costs);
    }
}
