package org.roundsman.web.health;

import jakarta.enterprise.context.ApplicationScoped;
import java.io.IOException;
import java.nio.file.FileStore;
import java.nio.file.Files;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.roundsman.readings.Backlog;
import org.roundsman.readings.StoredSize;
import org.roundsman.system.DataFolder;
import org.roundsman.web.page.Trouble;
import org.roundsman.web.page.Words;

/** Puts together how the service itself is doing; works without the database. */
@ApplicationScoped
class OwnHealth {

    private static final double GIGA = 1e9;

    private final Meters meters;
    private final Trouble trouble;
    private final DataFolder folder;
    private final StoredSize stored;
    private final Clock clock;

    OwnHealth(Meters meters, Trouble trouble, DataFolder folder, StoredSize stored, Clock clock) {
        this.meters = meters;
        this.trouble = trouble;
        this.folder = folder;
        this.stored = stored;
        this.clock = clock;
    }

    /** A name, what it is now, and what it means. */
    record Line(String name, String value, String meaning) {}

    /** A group of them. */
    record Group(String key, String title, List<Line> lines) {}

    /** All of it. */
    record Picture(String behind, List<Group> groups, List<Line> all) {}

    Picture now() {
        return new Picture(
                trouble.behind().orElse(""), List.of(rounds(), storing(), database(), machine()), meters.own());
    }

    private Group rounds() {
        return new Group(
                "rounds",
                "Rounds since the start",
                List.of(
                        line("Devices watched", "roundsman.rounds.devices", "each at its own interval"),
                        line("Rounds due", "roundsman.rounds.due", "their time came"),
                        line("Rounds done", "roundsman.rounds.done", "however they ended"),
                        line("Late", "roundsman.rounds.late", "begun more than a second after their time"),
                        line("Left out", "roundsman.rounds.skipped", "the round before had not ended"),
                        line("Without an answer", "roundsman.rounds.unanswered", "silent devices and lost replies"),
                        line("Refused", "roundsman.rounds.refused", "our credentials were rejected"),
                        line("Under way", "roundsman.rounds.inflight", "visits that wait for a reply"),
                        line("Waiting for a place", "roundsman.rounds.waiting", "held back by a bound"),
                        line("Requests without a reply", "roundsman.rounds.timeouts", "in time, retries included"),
                        new Line("Time behind", meters.times("roundsman.rounds.lag"), "from due to begun"),
                        new Line("Time to a reply", meters.times("roundsman.rounds.reply"), "of the first request")));
    }

    private Group storing() {
        Backlog backlog = trouble.backlog();
        Instant now = clock.instant();
        return new Group(
                "storing",
                "Storing",
                List.of(
                        new Line("Waiting in memory", Words.count(backlog.queued()), "readings"),
                        new Line("Waiting on disk", Words.count(backlog.spilled()), "readings"),
                        new Line("Lost", Words.count(backlog.lost()), "readings since the start"),
                        new Line(
                                "Oldest that waits",
                                backlog.oldest().map(at -> Words.ago(at, now)).orElse("none"),
                                "when it was read"),
                        new Line(
                                "Database",
                                backlog.failingSince()
                                        .map(at -> "takes nothing, " + Words.ago(at, now))
                                        .orElse("takes readings"),
                                backlog.trouble().orElse("")),
                        line("Rows copied", "roundsman.readings.rows", "since the start"),
                        line("Readings stored", "roundsman.readings.stored", "since the start"),
                        new Line("Time of a batch", meters.times("roundsman.readings.batches"), "one transaction")));
    }

    private Group database() {
        Optional<StoredSize.Size> size = stored.now();
        return new Group(
                "database",
                "Database",
                List.of(
                        new Line("Size", shown(size, s -> Words.figure(s.bytes() / GIGA, 2, "GB")), "on its disk"),
                        new Line(
                                "Partitions",
                                shown(size, s -> Words.count(s.partitions())),
                                "of raw readings and quarter hours"),
                        new Line(
                                "Oldest raw readings",
                                shown(size, s -> s.oldestDay()
                                        .map(LocalDate::toString)
                                        .orElse("none")),
                                "the day in UTC"),
                        line("Connections in use", "agroal.active.count", "by the service"),
                        line("Waiting for a connection", "agroal.awaiting.count", "threads of the service")));
    }

    private static String shown(Optional<StoredSize.Size> size, Function<StoredSize.Size, String> part) {
        return size.map(part).orElse(Words.NOT_AVAILABLE);
    }

    private Group machine() {
        return new Group(
                "machine",
                "Machine",
                List.of(
                        new Line("Room on disk", disk(), "where the data folder lies"),
                        new Line("Memory", memory(), "of the service itself"),
                        new Line(
                                "Processors",
                                String.valueOf(Runtime.getRuntime().availableProcessors()),
                                "that the service may use"),
                        line("Threads", "jvm.threads.live", "of the service")));
    }

    private Line line(String name, String meter, String meaning) {
        return new Line(name, meters.count(meter), meaning);
    }

    private String disk() {
        try {
            FileStore store = Files.getFileStore(folder.path());
            return Words.figure(store.getUsableSpace() / GIGA, 1, "GB") + " free of "
                    + Words.figure(store.getTotalSpace() / GIGA, 1, "GB");
        } catch (IOException e) {
            return Words.NOT_AVAILABLE + ": " + e.getMessage();
        }
    }

    private static String memory() {
        Runtime runtime = Runtime.getRuntime();
        double used = runtime.totalMemory() - runtime.freeMemory();
        return Words.figure(used / GIGA, 2, "GB") + " of " + Words.figure(runtime.maxMemory() / GIGA, 2, "GB");
    }
}
