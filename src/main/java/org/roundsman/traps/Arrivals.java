package org.roundsman.traps;

import java.net.InetAddress;
import java.time.Clock;
import java.time.Instant;
import java.util.Optional;
import org.roundsman.snmp.NamedNotification;
import org.roundsman.snmp.Notification;
import org.roundsman.snmp.NotificationListener;
import org.roundsman.snmp.NotificationRefusal;
import org.roundsman.timeline.DeviceEvent;
import org.roundsman.timeline.EventKind;

/** Sorts what is received: counted only, summed, or an event that waits to be stored. Never waits for anything. */
final class Arrivals implements NotificationListener {

    private final NoticeWords words;
    private final Allowances allowances;
    private final Counted counted;
    private final NoticeWriter writer;
    private final Clock clock;

    /** Where messages are counted that become no events. */
    record Counted(UnnamedNotifications unnamed, StrangeSenders strangers, TrapsMeters meters) {}

    Arrivals(NoticeWords words, Allowances allowances, Counted counted, NoticeWriter writer, Clock clock) {
        this.words = words;
        this.allowances = allowances;
        this.counted = counted;
        this.writer = writer;
        this.clock = clock;
    }

    @Override
    public boolean take(Notification notification) {
        Instant now = clock.instant();
        Optional<NamedNotification> named = words.name(notification.oid());
        if (named.isEmpty()) {
            counted.meters.unnamed.increment();
            counted.unnamed.count(notification.sender(), notification.oid(), now);
            return true;
        }
        NoticeTitle title = NoticeWords.title(named.get(), notification);
        if (!allowances.admits(notification.sender(), title, now)) {
            counted.meters.summed.increment();
            return true;
        }
        String detail = NoticeWords.detail(named.get(), notification);
        DeviceEvent event =
                new DeviceEvent(notification.sender(), now, EventKind.NOTIFICATION, title.text(), "", "", detail);
        boolean taken = writer.offer(new NoticeWriter.Waiting(event, notification.oid(), title));
        if (!taken) {
            counted.meters.lost.increment();
        }
        return taken;
    }

    @Override
    public void refused(InetAddress from, int version, NotificationRefusal reason) {
        counted.meters.refused(reason).increment();
        counted.strangers.count(from.getHostAddress(), version, reason, clock.instant());
    }

    @Override
    public void received() {
        counted.meters.received.increment();
    }

    @Override
    public void dropped(InetAddress from) {
        counted.meters.dropped.increment();
    }

    @Override
    public void repeated() {
        counted.meters.repeated.increment();
    }

    @Override
    public void answered() {
        counted.meters.answered.increment();
    }

    @Override
    public void reported() {
        counted.meters.reported.increment();
    }
}
