package org.roundsman.web.device;

import java.time.Instant;
import java.time.ZoneId;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.roundsman.fleet.DeviceFacts;
import org.roundsman.fleet.DeviceKind;
import org.roundsman.measure.Condition;
import org.roundsman.measure.Reading;
import org.roundsman.measure.Values;
import org.roundsman.readings.Availability;
import org.roundsman.readings.DeviceRow;
import org.roundsman.readings.Span;
import org.roundsman.web.fleet.DeviceLine;
import org.roundsman.web.fleet.FlagPair;
import org.roundsman.web.page.Words;

/** What a device's page shows, from what is known of it. */
record DeviceView(
        DeviceRow row,
        Optional<Reading> last,
        List<Span> spans,
        Availability week,
        List<DeviceFacts.Said> said,
        List<DeviceFacts.NamedRadio> named,
        String behind,
        Instant now) {

    /** Whether it may be a matter of credentials that it does not answer. */
    public boolean lockedOut() {
        return row.condition() != Condition.ANSWERING;
    }

    public DeviceLine line() {
        return DeviceLine.of(row, FlagPair.NONE, now);
    }

    ZoneId zone() {
        return ZoneId.of(row.timeZone());
    }

    public boolean accessPoint() {
        return row.kind() == DeviceKind.ACCESS_POINT;
    }

    /** When it last answered, in words. */
    public String lastAnswered() {
        return row.lastAnswered()
                .map(at -> Words.moment(at, zone()) + " (" + Words.ago(at, now) + ")")
                .orElse("never yet");
    }

    /** The time of the figures shown, in words; empty when there are none. */
    public String readAt() {
        return last.map(reading -> Words.moment(reading.at(), zone()) + " site time, " + Words.ago(reading.at(), now))
                .orElse("");
    }

    public List<Figure> figures() {
        return last.map(reading -> Figures.ofDevice(reading.device(), accessPoint()))
                .orElse(List.of());
    }

    public List<RadioLine> radios() {
        return RadioLine.of(last.map(Reading::radios).orElse(List.of()), named);
    }

    public List<Figure> networks() {
        return last.map(reading -> Figures.ofNetworks(reading.networks())).orElse(List.of());
    }

    public List<Figure> facts() {
        return Figures.ofFacts(said, zone());
    }

    /** The newest first. */
    public List<SpanLine> spanLines() {
        return spans.stream()
                .sorted(Comparator.comparing(Span::from).reversed())
                .map(span -> SpanLine.of(span, zone(), now))
                .toList();
    }

    /** Its availability in the time that the spans are of, and what is left out of it; empty when nothing counts. */
    public String available() {
        return week.share().isEmpty() ? "" : Words.figure(rounded(week.share().getAsDouble()), 2, "%");
    }

    /** Never up: what was silent for a second was not there all the time. */
    private static double rounded(double share) {
        return Math.floor(share * 10_000) / 100;
    }

    /** Time of planned work, which counts for nobody; empty when there was none. */
    public String planned() {
        return week.planned().isZero() ? "" : Words.length(week.planned());
    }

    /** Time in which nobody looked; empty when there was none worth a word. */
    public String unwatched() {
        return week.unwatched().toMinutes() < 1 ? "" : Words.length(week.unwatched());
    }

    Values lastDevice() {
        return last.map(Reading::device).orElse(Values.none(org.roundsman.measure.Subject.DEVICE));
    }
}
