package org.roundsman.notices.text;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;
import org.roundsman.alarms.AlarmKey;
import org.roundsman.alarms.AlarmType;
import org.roundsman.alarms.CauseKind;
import org.roundsman.alarms.Impact;
import org.roundsman.alarms.OpenAlarm;
import org.roundsman.alarms.OperatorState;
import org.roundsman.alarms.Resource;
import org.roundsman.alarms.Severity;

/** How messages read, in plain text and in HTML. */
class TextsTest {

    private static final Instant NOON = Instant.parse("2026-03-04T11:00:00Z");

    private final Texts texts = new Texts(new Links(Optional.of("https://roundsman.example/")), false);

    private static OpenAlarm alarm(AlarmKey key, String site, CauseKind cause, Impact impact) {
        boolean placed = !site.isEmpty();
        return new OpenAlarm(
                7,
                70,
                key,
                placed ? OptionalLong.of(1) : OptionalLong.empty(),
                placed ? "Orrin & Vale Booksellers" : "",
                placed ? OptionalLong.of(2) : OptionalLong.empty(),
                site,
                placed ? "Europe/Berlin" : "",
                "",
                "",
                Severity.CRITICAL,
                NOON,
                NOON.plusSeconds(60),
                NOON.plusSeconds(60),
                Optional.empty(),
                "The gateway is <silent>.",
                OperatorState.NONE,
                "",
                Optional.empty(),
                "",
                "",
                cause,
                OptionalLong.empty(),
                List.of("The gateway last answered 11:59:12."),
                impact,
                14,
                false,
                true);
    }

    private static OpenAlarm uplink() {
        Impact impact = new Impact(OptionalInt.of(10), OptionalInt.of(30), OptionalInt.empty(), 14, true);
        return alarm(AlarmKey.of(AlarmType.UPLINK_LOST, Resource.site(2)), "Mill Lane", CauseKind.UPLINK_LOST, impact);
    }

    @Test
    void aMailSaysWhatCauseWhoAndWhatNext() {
        Content content = texts.raise(uplink());
        assertThat(content.subject())
                .isEqualTo("Site cannot be reached at Mill Lane (Orrin & Vale Booksellers): uplink or gateway lost");
        assertThat(MailText.plain(content).lines())
                .containsSubsequence(
                        "The gateway is <silent>.",
                        "Since:",
                        "  Wed 4 Mar, 12:00 CET, severity critical",
                        "Cause:",
                        "  Uplink or gateway lost.",
                        "  The gateway last answered 11:59:12.",
                        "  14 other alarms come from this one.",
                        "Who suffers:",
                        "  About 40 people would be online now (staff networks 10, guest networks 30).",
                        "  14 access points are affected.",
                        "  Within the site's service hours.",
                        "Next step:",
                        "  Call the site: is there power? Then the carrier. The gateway and its line come before any"
                                + " access point.",
                        "You get this because you chose so. To change it: https://roundsman.example/notices",
                        "The alarm: https://roundsman.example/triage/alarms/7",
                        "The visit sheet: https://roundsman.example/triage/visit/7");
    }

    @Test
    void whoUsesABusyChannelIsOnlineAndNobodyIsNoCountOfNone() {
        Impact some = new Impact(OptionalInt.of(10), OptionalInt.of(30), OptionalInt.empty(), 1, true);
        Impact nobody = new Impact(OptionalInt.of(0), OptionalInt.of(0), OptionalInt.empty(), 1, false);
        AlarmKey busy = AlarmKey.of(AlarmType.UTILISATION_HIGH, Resource.device(7));
        assertThat(MailText.plain(texts.raise(alarm(busy, "Mill Lane", CauseKind.ITSELF, some))))
                .contains("About 40 people are usually online at this hour (staff networks 10, guest networks 30).")
                .doesNotContain("would be online");
        assertThat(MailText.plain(texts.raise(alarm(busy, "Mill Lane", CauseKind.ITSELF, nobody))))
                .contains("Nobody is usually online at this hour.");
        assertThat(MailText.plain(texts.clear(uplink(), NOON.plusSeconds(3_600), NOON, 1)))
                .contains("About 40 people would have been online");
    }

    /** What devices and people wrote is text, never markup (HTML living standard, section 13.1.4: character references). */
    @Test
    void nothingThatSomebodyWroteIsMarkupInHtml() {
        String html = MailText.html(texts.raise(uplink()));
        assertThat(html)
                .contains(
                        "The gateway is &lt;silent&gt;.",
                        "Orrin &amp; Vale",
                        "<a href=\"https://roundsman.example/triage/alarms/7\">")
                .doesNotContain("<silent>");
    }

    @Test
    void ourOwnAlarmsHaveNoPlace() {
        OpenAlarm blind = alarm(
                AlarmKey.of(AlarmType.VIEW_LOST, Resource.service()), "", CauseKind.ITSELF, Impact.unknown(0, false));
        Content content = new Texts(new Links(Optional.empty()), true).raise(blind);
        assertThat(content.subject()).isEqualTo("[invented] We are blind");
        assertThat(content.links()).isEmpty();
        assertThat(MailText.plain(content))
                .contains("11:00 UTC", "How many people would be online is not known", "invented");
    }

    @Test
    void whatIsStoredIsReadAgainAsItWas() {
        Content content = texts.clear(uplink(), NOON.plusSeconds(3_600), NOON, 1);
        assertThat(ContentJson.stored(ContentJson.read(ContentJson.stored(content))))
                .isEqualTo(ContentJson.stored(content));
        assertThat(content.lead()).isEqualTo("Over since Wed 4 Mar, 13:00 CET, after 1 h 0 min.");
        assertThat(content.facts()).containsEntry("seconds", 3_600L);
    }

    @Test
    void aLongSummaryNamesTwentyAndCountsTheOthers() {
        List<Content> parts = java.util.Collections.nCopies(33, texts.raise(uplink()));
        Content summary = texts.summary(parts, NOON, java.time.ZoneId.of("Europe/Berlin"));
        assertThat(summary.subject()).startsWith("33 more messages since Wed 4 Mar, 12:00 CET, the worst: Site cannot");
        assertThat(summary.sections().get(0).lines()).hasSize(21).last().isEqualTo("and 13 more");
    }
}
