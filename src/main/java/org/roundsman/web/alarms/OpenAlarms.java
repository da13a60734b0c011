package org.roundsman.web.alarms;

import jakarta.enterprise.context.RequestScoped;
import jakarta.inject.Named;
import java.time.Clock;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import org.roundsman.alarms.AlarmBook;
import org.roundsman.alarms.OpenAlarm;
import org.roundsman.web.page.Visitor;
import org.roundsman.web.page.Words;

/** Active alarms beside a device or a site; templates know it as {@code inject:alarms}. */
@Named("alarms")
@RequestScoped
public class OpenAlarms {

    private static final int MOST = 8;

    private final AlarmBook book;
    private final Visitor visitor;
    private final Clock clock;

    OpenAlarms(AlarmBook book, Visitor visitor, Clock clock) {
        this.book = book;
        this.visitor = visitor;
        this.clock = clock;
    }

    /**
     * What a fragment shows.
     *
     * @param more in words, how many are left out, or empty
     * @param address of all of them
     */
    public record Shown(List<AlarmLine> lines, String more, String address) {}

    public Shown ofDevice(long deviceId) {
        return shown(book.ofDevice(visitor.scope(), deviceId), "/alarms?device=" + deviceId);
    }

    public Shown ofSite(long siteId) {
        return shown(book.ofSite(visitor.scope(), siteId), "/alarms?site=" + siteId);
    }

    /** Causes before what they explain. */
    private Shown shown(List<OpenAlarm> alarms, String address) {
        Instant now = clock.instant();
        List<AlarmLine> lines = alarms.stream()
                .sorted(Comparator.comparing(
                        (OpenAlarm alarm) -> alarm.causedBy().isPresent()))
                .limit(MOST)
                .map(alarm -> AlarmLine.of(alarm, now))
                .toList();
        int left = alarms.size() - lines.size();
        return new Shown(
                lines, left == 0 ? "" : Words.many(left, "more alarm is", "more alarms are") + " active.", address);
    }
}
