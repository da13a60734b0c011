package org.roundsman.web.alarms;

import java.time.Duration;
import java.time.ZoneOffset;
import java.util.List;
import org.roundsman.alarms.QualityReport;
import org.roundsman.alarms.QualityReport.Load;
import org.roundsman.alarms.QualityReport.Mix;
import org.roundsman.alarms.QualityReport.Share;
import org.roundsman.web.page.Words;

/**
 * What the page about the quality of alarms shows.
 *
 * @param days how long the stretch is
 * @param people how many have the technician role
 */
record QualityView(QualityReport report, int days, int people) {

    private static final List<Integer> LENGTHS = List.of(7, 30, 90);

    /** One length of time to choose. */
    record Length(int days, boolean chosen, String link) {}

    /** One source of alarms. */
    record Source(String name, String link, String alarms, String share) {}

    /** One flood. */
    record FloodLine(String from, String lasted, String alarms) {}

    static int days(String text) {
        return LENGTHS.stream()
                .filter(days -> String.valueOf(days).equals(text))
                .findFirst()
                .orElse(LENGTHS.get(0));
    }

    public List<Length> lengths() {
        String technicians = report.technicians() == people ? "" : "&technicians=" + report.technicians();
        return LENGTHS.stream()
                .map(length -> new Length(length, length == days, "/alarms/quality?days=" + length + technicians))
                .toList();
    }

    public String alarms() {
        return Words.many(report.load().alarms(), "alarm", "alarms");
    }

    public String shared() {
        return Words.many(report.technicians(), "technician", "technicians");
    }

    public boolean none() {
        return report.load().alarms() == 0;
    }

    /** Figures beside the guide values; those of rates for each technician. */
    public List<GuideLine> measures() {
        Load load = report.load();
        return List.of(
                GuideLine.rate("Alarms per day", load.perDay(), 150, 300),
                GuideLine.rate("Alarms per hour", load.perHour(), 6, 12),
                GuideLine.rate("Alarms per 10 minutes", load.perTenMinutes(), 1, 2),
                GuideLine.most("Most alarms within 10 minutes", load.largest(), 10, "10 or fewer"),
                GuideLine.below("Periods of 10 minutes with more than 10 alarms", load.crowdedPeriods(), 0.01),
                GuideLine.below("Hours with more than 30 alarms", load.crowdedHoursShare(), 0.01)
                        .with(Words.many(load.crowdedHours(), "hour", "hours")),
                GuideLine.below("Time in flood", report.floods().share(), 0.01)
                        .with(Words.many(report.floods().all().size(), "flood", "floods")),
                GuideLine.share("Share of the ten most frequent alarms", report.topAlarms(), 0.05, "1 % to 5 %"),
                GuideLine.most("Chattering alarms", report.noise().chattering().size(), 0, "none"),
                GuideLine.most(
                        "Fleeting: clear again within 60 s", report.noise().fleeting(), 0, "none"),
                GuideLine.most(
                        "Stale on the worst day: active over 24 h",
                        report.stale().worstDay(),
                        4,
                        "fewer than 5"));
    }

    /** What EEMUA 191 says of the mean rate, from memory. */
    public String band() {
        double perTenMinutes = report.load().perTenMinutes();
        if (perTenMinutes > 10) {
            return "more than one per minute: very likely unacceptable";
        }
        if (perTenMinutes > 2) {
            return "more than one per five minutes: likely over-demanding";
        }
        if (perTenMinutes > 1) {
            return "at most one per five minutes: manageable";
        }
        return "at most one per ten minutes: very likely acceptable";
    }

    public List<Source> rules() {
        return sources(report.rules(), "");
    }

    public List<Source> devices() {
        return sources(report.devices(), "/alarms?device=");
    }

    public List<Source> chattering() {
        return sources(report.noise().chattering(), "/alarms/");
    }

    public List<Source> stale() {
        return sources(report.stale().now(), "/alarms/");
    }

    private static List<Source> sources(List<Share> shares, String link) {
        return shares.stream()
                .map(share -> new Source(
                        share.name(),
                        share.id() == 0 || link.isEmpty() ? "" : link + share.id(),
                        Words.count(share.alarms()),
                        GuideLine.percent(share.share())))
                .toList();
    }

    public List<FloodLine> floods() {
        return report.floods().all().stream()
                .map(flood -> new FloodLine(
                        Words.second(flood.from(), ZoneOffset.UTC) + " UTC",
                        Words.length(Duration.between(flood.from(), flood.to())),
                        Words.count(flood.alarms())))
                .limit(20)
                .toList();
    }

    /** Shares of the severities, and those of the guide. */
    public List<GuideLine> mix() {
        Mix mix = report.mix();
        return List.of(
                GuideLine.aboutOrMore("Minor, warning, indeterminate", mix.low(), 80),
                GuideLine.aboutOrLess("Major", mix.medium(), 15),
                GuideLine.aboutOrLess("Critical", mix.high(), 5));
    }
}
