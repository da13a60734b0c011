package org.roundsman.reports.figures;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZonedDateTime;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.roundsman.measure.Condition;
import org.roundsman.planned.Stretch;
import org.roundsman.readings.Span;
import org.roundsman.reports.SiteFigures.Day;
import org.roundsman.reports.Watch;
import org.roundsman.reports.figures.SitePeriod.Point;

/** Whatever the spans and windows: each moment of each access point stands in one place. Checked minute by minute. */
class SiteTimesPropertyTest {

    private static final int MINUTES = 3 * 1_440 - 60;

    /** Three days, on the second of which the clock skips an hour (tz database). */
    private static SampleSite site() {
        return new SampleSite("Europe/Berlin", LocalDate.parse("2026-03-28"), LocalDate.parse("2026-03-31"));
    }

    private static Instant minute(SampleSite site, int minute) {
        return site.from().plusSeconds(minute * 60L);
    }

    private static void spans(SampleSite site, long device, List<Integer> lengths, int turn) {
        int at = -200;
        for (int i = 0; i < lengths.size(); i++) {
            int kind = (i * 3 + turn) % (Condition.values().length + 1);
            if (kind < Condition.values().length) { // else a gap, of which nothing is known
                site.span(device, minute(site, at), minute(site, at + lengths.get(i)), Condition.values()[kind]);
            }
            at += lengths.get(i);
        }
    }

    @Property(tries = 150)
    void daysAndOutagesAddUpToTheWhole(
            @ForAll @Size(max = 12) List<@IntRange(min = 1, max = 700) Integer> first,
            @ForAll @Size(max = 12) List<@IntRange(min = 1, max = 700) Integer> second,
            @ForAll @IntRange(max = 4) int turn,
            @ForAll @Size(max = 5) List<@IntRange(min = -300, max = 4_500) Integer> works,
            @ForAll @IntRange(min = 1, max = 400) int work,
            @ForAll @IntRange(min = -500, max = 4_000) int since) {
        SampleSite site = site().points(1).open(6, "08:00", "18:00").open(7, "09:00", "00:00");
        site.pointSince(
                2,
                minute(site, since).atZone(site.site().zone()).toLocalDateTime().toString());
        spans(site, 1, first, turn);
        spans(site, 2, second, turn + 1);
        for (int i = 0; i < works.size(); i++) {
            site.work(i % 3, minute(site, works.get(i)), minute(site, works.get(i) + work));
        }
        SiteTimes times = site.times();
        Watch whole = times.whole();
        assertThat(whole.unwatched()).isGreaterThanOrEqualTo(Duration.ZERO);
        assertThat(times.days().stream().map(Day::watch).reduce(Watch.NONE, Watch::plus))
                .isEqualTo(whole);
        assertThat(times.days().stream().map(Day::length).reduce(Duration.ZERO, Duration::plus))
                .isEqualTo(Duration.ofMinutes(MINUTES));
        for (Condition condition : List.of(Condition.ANSWERING, Condition.SILENT, Condition.REFUSING)) {
            assertThat(part(whole, condition)).isEqualTo(counted(times, condition, false));
            assertThat(part(times.service(), condition)).isEqualTo(counted(times, condition, true));
        }
        assertThat(whole.planned()).isEqualTo(counted(times, null, false));
        assertThat(silence(times, List.of())).isEqualTo(whole.silent());
    }

    /** However causes are given to the silences, no time is lost or counted twice. */
    @Property(tries = 150)
    void outagesOfAnyCausesHoldAllSilence(
            @ForAll @Size(max = 12) List<@IntRange(min = 1, max = 700) Integer> first,
            @ForAll @Size(max = 12) List<@IntRange(min = 1, max = 700) Integer> second,
            @ForAll @Size(min = 1, max = 6) List<@IntRange(max = 3) Integer> causes) {
        SampleSite site = site().points(2);
        spans(site, 1, first, 1);
        spans(site, 2, second, 0);
        assertThat(silence(site.times(), causes)).isEqualTo(site.times().whole().silent());
    }

    private static Duration silence(SiteTimes times, List<Integer> causes) {
        List<Silence> silences = times.silences();
        List<Gone> gone = Gone.of(silences, silence -> {
            int cause = causes.isEmpty() ? 0 : causes.get(silences.indexOf(silence) % causes.size());
            return cause == 0 ? Optional.empty() : Optional.of(SampleEpisodes.silent(cause, 1));
        });
        assertThat(gone).isSortedAccordingTo(java.util.Comparator.comparing(Gone::from));
        return gone.stream().map(Gone::silence).reduce(Duration.ZERO, Duration::plus);
    }

    private static Duration part(Watch watch, Condition condition) {
        return switch (condition) {
            case ANSWERING -> watch.answering();
            case SILENT -> watch.silent();
            case REFUSING -> watch.refusing();
            case UNWATCHED -> watch.unwatched();
        };
    }

    /** Minutes in that condition outside planned work, or with no condition minutes in planned work. */
    private static Duration counted(SiteTimes times, Condition condition, boolean service) {
        long sum = 0;
        for (Point point : times.site().points()) {
            sum += IntStream.range(0, MINUTES)
                    .mapToObj(i -> times.site().from().plusSeconds(i * 60L))
                    .filter(at -> !at.isBefore(point.since()))
                    .filter(at -> !service || open(at.atZone(times.site().zone())))
                    .filter(at -> condition == null
                            ? worked(times, point, at)
                            : !worked(times, point, at) && in(times, point, condition, at))
                    .count();
        }
        return Duration.ofMinutes(sum);
    }

    private static boolean open(ZonedDateTime local) {
        LocalTime time = local.toLocalTime();
        return switch (local.getDayOfWeek()) {
            case SATURDAY -> !time.isBefore(LocalTime.of(8, 0)) && time.isBefore(LocalTime.of(18, 0));
            case SUNDAY -> !time.isBefore(LocalTime.of(9, 0));
            default -> false;
        };
    }

    private static boolean worked(SiteTimes times, Point point, Instant at) {
        return covers(times.planned().getOrDefault(0L, List.of()), at)
                || covers(times.planned().getOrDefault(point.deviceId(), List.of()), at);
    }

    private static boolean covers(List<Stretch> stretches, Instant at) {
        return stretches.stream().anyMatch(stretch -> stretch.covers(at));
    }

    private static boolean in(SiteTimes times, Point point, Condition condition, Instant at) {
        List<Span> spans = times.spans().getOrDefault(point.deviceId(), List.of());
        return spans.stream()
                .anyMatch(span -> span.condition() == condition
                        && !at.isBefore(span.from())
                        && at.isBefore(span.to().orElseThrow()));
    }
}
