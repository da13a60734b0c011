package org.roundsman.web.page;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.Duration;
import java.util.Optional;
import org.roundsman.readings.Backlog;
import org.roundsman.readings.BacklogSource;

/** How far what pages show is behind the rounds, in words. */
@ApplicationScoped
public class Trouble {

    private final BacklogSource backlog;
    private final Clock clock;

    Trouble(BacklogSource backlog, Clock clock) {
        this.backlog = backlog;
        this.clock = clock;
    }

    public Backlog backlog() {
        return backlog.backlog();
    }

    /** What to say above a page that shows the past; empty when it shows the present. */
    public Optional<String> behind() {
        Backlog now = backlog();
        if (!now.behind() && now.lost() == 0) {
            return Optional.empty();
        }
        StringBuilder text = new StringBuilder();
        now.failingSince().ifPresent(since -> text.append("Readings have not been stored for ")
                .append(Words.length(Duration.between(since, clock.instant())))
                .append(". "));
        if (now.behind()) {
            text.append("This page is behind: ")
                    .append(Words.many(now.queued() + now.spilled(), "reading waits", "readings wait"))
                    .append(" to be stored. The rounds go on. ");
        }
        if (now.lost() > 0) {
            text.append(Words.many(now.lost(), "reading was", "readings were")).append(" lost since the start. ");
        }
        now.trouble().ifPresent(text::append);
        return Optional.of(text.toString().strip());
    }

    String withoutDatabase() {
        return behind().orElse("The rounds go on, and their readings wait to be stored. Try again in a moment.");
    }
}
