package org.roundsman.reports;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;

/** Summaries of reports of any kind. Figures are worked out here anew from the report. */
class SummaryPropertyTest {

    private static final ReportWords WORDS = new ReportWords(Optional::empty);
    private static final Pattern NUMBER = Pattern.compile("\\d[\\d,]*(\\.\\d+)?");

    private static final Set<String> SECTIONS = Set.of(
            "summary",
            "availability",
            "outages",
            "people",
            "channels",
            "rooms",
            "equipment",
            "handling",
            "work",
            "advice",
            "methods");

    @Property(tries = 300)
    void noSummaryIsLongerThan120Words(@ForAll long seed) {
        Report report = RandomReport.of(seed);
        for (Locale language : WORDS.languages()) {
            String text =
                    WORDS.summary(report, language).stream().map(Sentence::text).collect(Collectors.joining(" "));
            long words = Arrays.stream(text.split("[\\s\\u00a0\\u202f]+"))
                    .filter(word -> !word.isEmpty())
                    .count();
            assertThat(words).as(text).isBetween(1L, 120L);
        }
    }

    @Property(tries = 300)
    void eachSentenceNamesItsSectionAndSaysNoFigureThatIsNotInTheReport(@ForAll long seed) {
        Report report = RandomReport.of(seed);
        Set<Double> figures = figures(report);
        for (Sentence sentence : WORDS.summary(report, Locale.ENGLISH)) {
            assertThat(SECTIONS).contains(sentence.anchor());
            Matcher numbers = NUMBER.matcher(sentence.text());
            while (numbers.find()) {
                double number = Double.parseDouble(numbers.group().replace(",", ""));
                assertThat(figures.stream().anyMatch(one -> Math.abs(one - number) < 1e-9))
                        .as(number + " in: " + sentence.text())
                        .isTrue();
            }
        }
    }

    @Property(tries = 300)
    void whatWasHardlyObservedIsComparedWithNothing(@ForAll long seed) {
        Report report = RandomReport.of(seed);
        boolean comparable = report.crowd().observed() >= 0.8
                && (report.crowd().monthBefore().observed() >= 0.8
                        || report.crowd().yearBefore().observed() >= 0.8);
        List<Sentence> summary = WORDS.summary(report, Locale.ENGLISH);
        if (!comparable) {
            assertThat(summary).noneMatch(sentence -> sentence.key().startsWith("summary.trend"));
        }
        if (report.whole().share().isEmpty() && report.service().share().isEmpty()) {
            assertThat(summary).noneMatch(sentence -> sentence.anchor().equals("outages"));
            assertThat(summary.get(0).key()).isEqualTo("summary.nothing");
        }
    }

    private static double down(double share, int decimals) {
        double power = Math.pow(10, decimals);
        return Math.floor(share * 100 * power + 1e-9) / power;
    }

    /** Without decimals where there are many. */
    private static double near(double figure) {
        return java.math.BigDecimal.valueOf(figure)
                .setScale(figure >= 10 ? 0 : 1, java.math.RoundingMode.HALF_EVEN)
                .doubleValue();
    }

    private static Set<Double> figures(Report report) {
        Set<Double> figures = new TreeSet<>();
        report.whole().share().ifPresent(share -> figures.add(down(share, 2)));
        report.service().share().ifPresent(share -> figures.add(down(share, 2)));
        report.whole().coverage().ifPresent(share -> figures.add(down(share, 0)));
        figures.add((double) report.sites().size());
        figures.add((double)
                report.sites().stream().filter(site -> site.met().orElse(false)).count());
        figures.add((double)
                report.sites().stream().filter(site -> !site.met().orElse(true)).count());
        figures.add((double) report.outages().size());
        List<Outage> lasting = report.outages().stream()
                .filter(outage -> outage.cause() != Outage.Cause.COMES_AND_GOES)
                .toList();
        List<Outage> whole = lasting.stream().filter(Outage::wholeSite).toList();
        figures.add((double) whole.size());
        longest(figures, lasting);
        longest(figures, whole);
        figures.add((double) report.rooms().size());
        figures.add((double) report.recommendations().size());
        figures.add((double) report.equipment().firmware().getOrDefault("WITHDRAWN", 0));
        figures.add((double) report.equipment().ending().size());
        report.equipment().ending().stream().findFirst().ifPresent(first -> day(figures, first.lastDay()));
        day(figures, report.subject().from());
        day(figures, report.subject().last());
        people(figures, report.crowd());
        return figures;
    }

    private static void longest(Set<Double> figures, List<Outage> outages) {
        outages.stream().map(Outage::length).max(Comparator.naturalOrder()).ifPresent(length -> {
            long minutes = length.plusSeconds(30).toMinutes();
            figures.add((double) (length.toSeconds() < 60 ? length.toSeconds() : minutes));
            figures.add((double) (minutes / 60));
            figures.add((double) (minutes % 60));
        });
    }

    private static void day(Set<Double> figures, LocalDate day) {
        figures.add((double) day.getDayOfMonth());
        figures.add((double) day.getYear());
    }

    private static void people(Set<Double> figures, Crowd crowd) {
        crowd.clients().ifPresent(clients -> {
            figures.add(near(clients.all()));
            for (Crowd.Earlier earlier : List.of(crowd.monthBefore(), crowd.yearBefore())) {
                earlier.clients().ifPresent(before -> {
                    figures.add(near(before));
                    figures.add(Math.rint(Math.abs(clients.all() / before - 1) * 100));
                });
            }
        });
        crowd.busiest().ifPresent(hour -> figures.add(near(hour.clients().all())));
    }
}
