package org.roundsman.web.api;

import java.time.Instant;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.roundsman.alarms.AlarmAct;
import org.roundsman.alarms.AlarmChange;
import org.roundsman.alarms.AlarmType;
import org.roundsman.alarms.Episode;

/** What the past of an alarm is made of, and which alarms there are. */
final class AlarmPastJson {

    private AlarmPastJson() {}

    /** One status change. */
    @Schema(name = "AlarmChange")
    record Change(
            @Schema(examples = "90311") long id,
            @Schema(examples = "1207") long episodeId,
            @Schema(examples = "2026-03-04T09:31:07Z") Instant at,

            @Schema(description = "cleared, or the new severity", examples = "major")
            String severity,

            @Schema(examples = "Silent since 09:30:10.") String text) {

        static Change of(AlarmChange change) {
            return new Change(
                    change.id(),
                    change.episodeId(),
                    change.at(),
                    change.severity().map(Choice::word).orElse("cleared"),
                    change.text());
        }
    }

    /** One thing that somebody did. */
    @Schema(name = "AlarmAct")
    record Act(
            @Schema(examples = "512") long id,
            @Schema(examples = "1207") long episodeId,
            @Schema(examples = "2026-03-04T09:40:00Z") Instant at,

            @Schema(description = "Sign-in name, or roundsman: the service by itself", examples = "wren")
            String person,

            @Schema(description = "ack, take, release, note, shelve, unshelve, close or reopen", examples = "note")
            String act,

            @Schema(examples = "Called the site: the builders cut the cable.")
            String text,

            @Schema(nullable = true, description = "End of the shelf")
            Instant until) {

        static Act of(AlarmAct act) {
            return new Act(
                    act.id(),
                    act.episodeId(),
                    act.at(),
                    act.by(),
                    Choice.word(act.kind()),
                    act.text(),
                    act.until().orElse(null));
        }
    }

    /** From one raise to its clear. */
    @Schema(name = "AlarmEpisode")
    record EpisodeJson(
            @Schema(examples = "1207") long id,
            @Schema(examples = "2026-03-04T09:30:10Z") Instant began,
            @Schema(examples = "2026-03-04T09:31:07Z") Instant raised,

            @Schema(nullable = true, examples = "2026-03-04T10:02:44Z")
            Instant clearedAt,

            @Schema(examples = "major") String severity,

            @Schema(description = "The worst severity of the episode", examples = "critical")
            String highest,

            @Schema(examples = "Silent since 09:30:10.") String text,

            @Schema(description = "What was said when it cleared", examples = "Answers again after 32 min.")
            String summary,

            AlarmJson.Why cause,
            AlarmJson.Suffering impact,
            List<Affected> affected,

            @Schema(description = "It lay in planned work at some moment", examples = "false")
            boolean planned) {

        static EpisodeJson of(Episode episode) {
            return new EpisodeJson(
                    episode.id(),
                    episode.began(),
                    episode.raised(),
                    episode.cleared().orElse(null),
                    Choice.word(episode.severity()),
                    Choice.word(episode.highest()),
                    episode.text(),
                    episode.summary(),
                    new AlarmJson.Why(
                            Choice.word(episode.cause()),
                            AlarmJson.number(episode.causedBy()),
                            episode.evidence(),
                            episode.settled(),
                            0),
                    AlarmJson.Suffering.of(episode.impact()),
                    episode.affected().stream()
                            .map(one -> new Affected(one.deviceId(), one.name()))
                            .toList(),
                    episode.wasPlanned());
        }
    }

    /** A device that suffered. */
    @Schema(name = "AffectedDevice")
    record Affected(
            @Schema(examples = "418") long deviceId,
            @Schema(examples = "Waiting room") String name) {}

    /** One entry of the alarm inventory. */
    @Schema(name = "AlarmType")
    record Type(
            @Schema(examples = "device-silent") String id,
            @Schema(examples = "Does not answer") String title,

            @Schema(description = "ITU-T X.733 or X.736", examples = "communications")
            String event,

            @Schema(description = "service, site or device", examples = "device")
            String resource,

            @Schema(description = "What is seen", examples = "The device does not answer.")
            String meaning,

            @Schema(description = "What to do", examples = "Look whether it has power.")
            String advice) {

        static Type of(AlarmType type) {
            return new Type(
                    type.id(),
                    type.title(),
                    type.event().word(),
                    Choice.word(type.resource()),
                    type.meaning(),
                    type.advice());
        }
    }
}
