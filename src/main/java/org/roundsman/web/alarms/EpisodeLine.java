package org.roundsman.web.alarms;

import java.time.Instant;
import java.time.ZoneId;
import org.roundsman.alarms.CauseKind;
import org.roundsman.alarms.Episode;
import org.roundsman.web.page.Words;

/** One episode in the list of an alarm's episodes. */
record EpisodeLine(
        String began,
        String cleared,
        String lasted,
        String highest,
        String cause,
        String text,
        boolean explained,
        boolean planned) {

    static EpisodeLine of(Episode episode, ZoneId zone, Instant now) {
        return new EpisodeLine(
                Words.second(episode.began(), zone),
                episode.cleared().map(at -> Words.second(at, zone)).orElse(""),
                Words.length(episode.duration(now)),
                episode.highest().word(),
                episode.cause() == CauseKind.ITSELF ? "" : episode.cause().word(),
                episode.summary().isEmpty() ? episode.text() : episode.summary(),
                episode.causedBy().isPresent(),
                episode.wasPlanned());
    }
}
