package org.roundsman.reports.document;

import java.time.Duration;
import java.util.Optional;
import java.util.OptionalDouble;
import org.roundsman.reports.Report;
import org.roundsman.reports.ReportLook;
import org.roundsman.reports.words.Catalogue;
import org.roundsman.reports.words.Formats;

/** What sections are written with: the report, how it is to look, and the words. */
record Ink(Report report, ReportLook look, Catalogue words) {

    Formats formats() {
        return words.formats();
    }

    /** The text of a key, without the gaps that choices leave. */
    String say(String key, Object... pairs) {
        return words.say(key, pairs).strip();
    }

    Section.Draft section(String id) {
        return new Section.Draft(id, this);
    }

    /** The days of the report: a month by its name, others from the first to the last. */
    String period() {
        return report.subject()
                .month()
                .map(formats()::month)
                .orElseGet(() -> say(
                        "period.days",
                        "from",
                        formats().day(report.subject().from()),
                        "to",
                        formats().day(report.subject().last())));
    }

    /** The name of the customer's site, where it has just one: no table has to say it in each row. */
    Optional<String> onlySite() {
        return report.sites().size() == 1 ? Optional.of(report.sites().get(0).site()) : Optional.empty();
    }

    String share(OptionalDouble share) {
        return share.isPresent() ? formats().share(share.getAsDouble()) : words.notObserved();
    }

    String number(OptionalDouble figure) {
        return figure.isPresent() ? formats().number(figure.getAsDouble()) : words.notObserved();
    }

    String percent(OptionalDouble figure) {
        return figure.isPresent() ? formats().percent(figure.getAsDouble(), 1) : words.notObserved();
    }

    String time(Optional<Duration> time) {
        return time.map(formats()::time).orElse(say("not.known"));
    }

    /** A name that may not be known. */
    String known(String text) {
        return text.isBlank() ? say("not.known") : text;
    }
}
