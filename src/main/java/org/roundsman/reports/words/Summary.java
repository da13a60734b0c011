package org.roundsman.reports.words;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import java.util.regex.Pattern;
import org.roundsman.reports.Crowd;
import org.roundsman.reports.Outage;
import org.roundsman.reports.Recommendation;
import org.roundsman.reports.Report;
import org.roundsman.reports.Room;
import org.roundsman.reports.Sentence;
import org.roundsman.reports.Watch;

/** Writes the summary of a report: a sentence is there only when the figures carry it, the least important go first. */
public final class Summary {

    /** Words that a summary has at most. */
    public static final int MOST_WORDS = 120;

    /** Share of the time below which we say that we were not looking enough, as in the recommendations. */
    static final double LOOKED_ENOUGH = 0.95;

    /** Share of the hours that two stretches need, both, to be compared. */
    static final double COMPARABLE = 0.8;

    /** A change smaller than this counts as none. */
    private static final double NO_CHANGE = 0.05;

    /** Letters of a name that fit into a sentence. */
    private static final int NAME = 40;

    private static final Pattern GAPS = Pattern.compile("[\\s\\u00a0\\u2009\\u202f]+");

    private final Report report;
    private final Catalogue words;
    private final Formats formats;
    private final List<Ranked> found = new ArrayList<>();

    /** @param rank 0 stays longest */
    private record Ranked(Sentence sentence, int rank) {}

    public Summary(Report report, Catalogue words) {
        this.report = report;
        this.words = words;
        this.formats = words.formats();
    }

    public List<Sentence> sentences() {
        found.clear();
        availability();
        targets();
        outages();
        people();
        rooms();
        equipment();
        advice();
        List<Ranked> kept = new ArrayList<>(found);
        while (kept.size() > 1 && count(kept) > MOST_WORDS) {
            kept.remove(kept.stream().max(Comparator.comparingInt(Ranked::rank)).orElseThrow());
        }
        return kept.stream().map(Ranked::sentence).toList();
    }

    private static int count(List<Ranked> sentences) {
        return sentences.stream().mapToInt(one -> count(one.sentence().text())).sum();
    }

    /** How many words a text has; a number and its unit count as two. */
    static int count(String text) {
        return (int) GAPS.splitAsStream(text).filter(word -> !word.isEmpty()).count();
    }

    private void say(int rank, String anchor, String key, Object... pairs) {
        found.add(new Ranked(new Sentence(key, words.say(key, pairs), anchor), rank));
    }

    private void availability() {
        Watch watch = report.service().share().isPresent() ? report.service() : report.whole();
        boolean around = watch.equals(report.whole());
        Object[] period = period();
        if (watch.share().isEmpty()) {
            say(0, "availability", "summary.nothing", period);
            return;
        }
        String key = around ? "summary.available" : "summary.available.service";
        say(
                0,
                "availability",
                key,
                with(period, "share", formats.share(watch.share().getAsDouble())));
        OptionalDouble coverage = report.whole().coverage();
        if (coverage.isPresent() && coverage.getAsDouble() < LOOKED_ENOUGH) {
            say(1, "availability", "summary.coverage", "coverage", formats.coarse(coverage.getAsDouble()));
        }
    }

    private Object[] period() {
        boolean month = report.subject().month().isPresent();
        return new Object[] {
            "kind", month ? "month" : "days",
            "month", report.subject().month().map(formats::month).orElse(""),
            "from", formats.day(report.subject().from()),
            "to", formats.day(report.subject().last())
        };
    }

    private static Object[] with(Object[] pairs, String name, Object value) {
        Object[] more = java.util.Arrays.copyOf(pairs, pairs.length + 2);
        more[pairs.length] = name;
        more[pairs.length + 1] = value;
        return more;
    }

    private void targets() {
        int sites = report.sites().size();
        List<String> missed = report.sites().stream()
                .filter(site -> site.met().filter(met -> !met).isPresent())
                .map(site -> brief(site.site()))
                .toList();
        long met =
                report.sites().stream().filter(site -> site.met().orElse(false)).count();
        if (missed.size() == 1) {
            say(2, "availability", "summary.target.missed", "site", missed.get(0), "sites", sites);
        } else if (missed.size() > 1 && missed.size() == sites) {
            say(2, "availability", "summary.targets.none", "sites", sites);
        } else if (missed.size() > 1) {
            say(2, "availability", "summary.targets.missed", "missed", missed.size(), "sites", sites);
        } else if (met > 0 && met == sites) {
            say(5, "availability", "summary.targets.met", "sites", sites);
        } else if (met > 0) {
            say(5, "availability", "summary.targets.known", "met", met, "sites", sites);
        }
    }

    private void outages() {
        if (report.whole().share().isEmpty()) {
            return;
        }
        List<Outage> all = report.outages();
        List<Outage> lasting = all.stream()
                .filter(outage -> outage.cause() != Outage.Cause.COMES_AND_GOES)
                .toList();
        if (all.isEmpty()) {
            say(3, "outages", "summary.outages.none");
        } else if (lasting.isEmpty()) {
            Outage most = all.stream().max(Comparator.comparing(Outage::times)).orElseThrow();
            say(3, "outages", "summary.outages.flaps", "count", all.size(), "site", brief(most.site()));
        } else {
            lasting(all, lasting);
        }
    }

    /** @param lasting those that lasted, and did not come and go */
    private void lasting(List<Outage> all, List<Outage> lasting) {
        Outage longest = longest(lasting);
        List<Outage> whole = lasting.stream().filter(Outage::wholeSite).toList();
        boolean mixed = all.size() > 1 && !whole.isEmpty() && whole.size() < all.size();
        Outage told = mixed && !longest.ongoing() ? longest(whole) : longest;
        String kind = all.size() == 1 ? "one" : whole.isEmpty() ? "part" : mixed ? "mixed" : "whole";
        String key = longest.ongoing() ? "summary.outages.ongoing" : "summary.outages";
        Object[] pairs = {
            "kind", kind,
            "count", all.size(),
            "whole", whole.size(),
            "site", brief(told.site()),
            "time", formats.speltTime(told.length())
        };
        say(3, "outages", key, pairs);
    }

    private static Outage longest(List<Outage> outages) {
        return outages.stream().max(Comparator.comparing(Outage::length)).orElseThrow();
    }

    /** Nobody reads tenths of people where there are many. */
    private String clients(double figure) {
        return figure >= 10 ? formats.whole(figure) : formats.number(figure);
    }

    private void people() {
        Crowd crowd = report.crowd();
        if (crowd.clients().isEmpty()) {
            return;
        }
        double mean = crowd.clients().get().all();
        String busiest =
                crowd.busiest().map(hour -> clients(hour.clients().all())).orElse(clients(mean));
        say(4, "people", "summary.people", "mean", clients(mean), "busiest", busiest);
        trend(mean, crowd.monthBefore(), report.subject().month().isPresent() ? "month" : "days", 8);
        trend(mean, crowd.yearBefore(), "year", 9);
    }

    private void trend(double mean, Crowd.Earlier earlier, String since, int rank) {
        boolean comparable = report.crowd().observed() >= COMPARABLE && earlier.observed() >= COMPARABLE;
        if (!comparable || earlier.clients().orElse(0) <= 0) {
            return;
        }
        double change = mean / earlier.clients().getAsDouble() - 1;
        String how = Math.abs(change) < NO_CHANGE ? "same" : change > 0 ? "more" : "fewer";
        say(
                rank,
                "people",
                "summary.trend." + how,
                "since",
                since,
                "change",
                formats.percent(Math.abs(change) * 100, 0),
                "before",
                clients(earlier.clients().getAsDouble()));
    }

    private void rooms() {
        if (!report.rooms().isEmpty()) {
            Room worst = report.rooms().get(0);
            String place = worst.place().isBlank() ? worst.device() : worst.place();
            String where = report.sites().size() > 1
                    ? words.say("summary.place", "place", brief(place), "site", brief(worst.site()))
                    : brief(place);
            say(6, "rooms", "summary.rooms", "count", report.rooms().size(), "place", where);
        }
    }

    private void equipment() {
        int withdrawn = report.equipment().firmware().getOrDefault("WITHDRAWN", 0);
        if (withdrawn > 0) {
            say(7, "equipment", "summary.withdrawn", "count", withdrawn);
        }
        if (!report.equipment().ending().isEmpty()) {
            say(
                    7,
                    "equipment",
                    "summary.ending",
                    "count",
                    report.equipment().ending().size(),
                    "day",
                    formats.day(report.equipment().ending().get(0).lastDay()));
        }
    }

    private void advice() {
        if (!report.recommendations().isEmpty()) {
            Recommendation first = report.recommendations().get(0);
            say(
                    5,
                    "advice",
                    "summary.advice",
                    "count",
                    report.recommendations().size(),
                    "first",
                    words.say("advice.brief." + first.kind().name()));
        }
    }

    private static String brief(String name) {
        return name.codePointCount(0, name.length()) <= NAME
                ? name
                : name.substring(0, name.offsetByCodePoints(0, NAME - 1)) + "…";
    }
}
