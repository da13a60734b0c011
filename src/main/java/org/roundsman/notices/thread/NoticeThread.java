package org.roundsman.notices.thread;

import java.time.Instant;
import java.util.Optional;
import org.roundsman.alarms.Severity;

/**
 * What people know as one matter: an alarm from its raise to its clear, however often it comes and goes in between.
 *
 * @param id 0 while not stored
 * @param episodeId the latest
 * @param raisedAt first raise
 * @param clearedAt last clear, while nothing was raised after it
 * @param clearedTimes how often it cleared
 * @param toldAt when it was first told, or would have been, had anybody wanted it
 * @param toldSeverity the worst that was told
 * @param escalations how often it was passed on
 * @param escalatedAt when that was last
 * @param over nothing more will be told of it
 */
public record NoticeThread(
        long id,
        long alarmId,
        long episodeId,
        Instant raisedAt,
        Optional<Instant> clearedAt,
        int clearedTimes,
        Optional<Instant> toldAt,
        Optional<Severity> toldSeverity,
        int escalations,
        Optional<Instant> escalatedAt,
        boolean over) {

    static NoticeThread begin(long alarmId, long episodeId, Instant at) {
        return new NoticeThread(
                0,
                alarmId,
                episodeId,
                at,
                Optional.empty(),
                0,
                Optional.empty(),
                Optional.empty(),
                0,
                Optional.empty(),
                false);
    }

    NoticeThread raisedAgain(long episode) {
        return new NoticeThread(
                id,
                alarmId,
                episode,
                raisedAt,
                Optional.empty(),
                clearedTimes,
                toldAt,
                toldSeverity,
                escalations,
                escalatedAt,
                false);
    }

    NoticeThread cleared(Instant at) {
        return new NoticeThread(
                id,
                alarmId,
                episodeId,
                raisedAt,
                Optional.of(at),
                clearedTimes + 1,
                toldAt,
                toldSeverity,
                escalations,
                escalatedAt,
                false);
    }

    NoticeThread told(Instant at, Severity severity) {
        return new NoticeThread(
                id,
                alarmId,
                episodeId,
                raisedAt,
                clearedAt,
                clearedTimes,
                Optional.of(toldAt.orElse(at)),
                Optional.of(severity),
                escalations,
                escalatedAt,
                false);
    }

    NoticeThread escalated(Instant at) {
        return new NoticeThread(
                id,
                alarmId,
                episodeId,
                raisedAt,
                clearedAt,
                clearedTimes,
                toldAt,
                toldSeverity,
                escalations + 1,
                Optional.of(at),
                false);
    }

    NoticeThread ended() {
        return new NoticeThread(
                id,
                alarmId,
                episodeId,
                raisedAt,
                clearedAt,
                clearedTimes,
                toldAt,
                toldSeverity,
                escalations,
                escalatedAt,
                true);
    }
}
