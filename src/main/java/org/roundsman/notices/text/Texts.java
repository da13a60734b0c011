package org.roundsman.notices.text;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.roundsman.alarms.OpenAlarm;
import org.roundsman.notices.text.Content.Section;

/** Words the messages. */
public final class Texts {

    private static final String INVENTED = "All data in this message is invented for demonstration.";
    private static final int LISTED = 20;

    private final Links links;
    private final boolean invented;

    /**
     * @param invented whether every message says that its data is invented
     */
    public Texts(Links links, boolean invented) {
        this.links = links;
        this.invented = invented;
    }

    /** Something is wrong, and these people were not told yet. */
    public Content raise(OpenAlarm alarm) {
        return standing(alarm, "", alarm.text());
    }

    /** It got worse than what was told. */
    public Content worse(OpenAlarm alarm) {
        String now = "Now " + alarm.severity().word();
        return standing(alarm, now + ": ", now + ". " + alarm.text());
    }

    /** Nobody acknowledged it. */
    public Content escalation(OpenAlarm alarm, Instant told, Instant now) {
        String since = "Nobody has acknowledged this for " + AlarmWords.length(Duration.between(told, now)) + ". ";
        return standing(alarm, "Still nobody on it: ", since + alarm.text());
    }

    private Content standing(OpenAlarm alarm, String before, String lead) {
        List<Section> sections = new ArrayList<>();
        sections.add(new Section(
                "Since",
                List.of(AlarmWords.moment(alarm.began(), alarm.zone()) + ", severity "
                        + alarm.severity().word())));
        sections.addAll(cause(alarm));
        sections.add(new Section("Who suffers", AlarmWords.impact(alarm, true)));
        sections.add(new Section("Next step", List.of(alarm.advice())));
        boolean place = alarm.siteId().isPresent();
        return content(
                before + AlarmWords.headline(alarm),
                lead,
                sections,
                links.ofAlarm(alarm.id(), place),
                AlarmWords.facts(alarm));
    }

    private static List<Section> cause(OpenAlarm alarm) {
        List<String> lines = new ArrayList<>();
        if (!alarm.cause().word().isEmpty()) {
            lines.add(capital(alarm.cause().word()) + ".");
        }
        lines.addAll(alarm.evidence());
        if (alarm.pointing() > 0) {
            lines.add(alarm.pointing() + (alarm.pointing() == 1 ? " other alarm comes" : " other alarms come")
                    + " from this one.");
        }
        return lines.isEmpty() ? List.of() : List.of(new Section("Cause", lines));
    }

    /**
     * What was told is over.
     *
     * @param alarm as it was in its last episode
     * @param raised when the first episode was raised
     * @param times how often it cleared, at least 1
     */
    public Content clear(OpenAlarm alarm, Instant cleared, Instant raised, int times) {
        Instant began = times > 1 || raised.isBefore(alarm.began()) ? raised : alarm.began();
        Duration length = Duration.between(began, cleared);
        ZoneId zone = alarm.zone();
        String lead = "Over since " + AlarmWords.moment(cleared, zone) + ", after " + AlarmWords.length(length)
                + (times > 1 ? ". It came and went " + times + " times." : ".");
        List<Section> sections = new ArrayList<>(cause(alarm));
        sections.add(new Section("Who suffered", AlarmWords.impact(alarm, false)));
        Map<String, Object> facts = AlarmWords.facts(alarm);
        facts.put("cleared", cleared.toString());
        facts.put("seconds", length.toSeconds());
        facts.put("times", times);
        return content("Over: " + AlarmWords.headline(alarm), lead, sections, links.ofAlarm(alarm.id(), false), facts);
    }

    /**
     * In place of messages over the hourly bound.
     *
     * @param parts of those messages, the worst first
     * @param since when the first of them came
     */
    public Content summary(List<Content> parts, Instant since, ZoneId zone) {
        String subject = parts.size() + " more messages since " + AlarmWords.moment(since, zone) + ", the worst: "
                + parts.get(0).subject().replace(mark(), "");
        List<String> lines = parts.stream().limit(LISTED).map(Content::subject).toList();
        Map<String, Object> facts = new LinkedHashMap<>();
        facts.put("count", parts.size());
        facts.put("messages", parts.stream().map(Content::facts).toList());
        return content(
                subject,
                "So many messages came within the hour that these stand together here.",
                List.of(new Section("They are", more(lines, parts.size()))),
                links.page("All alarms", "/triage"),
                facts);
    }

    /**
     * A summary of a stretch of time.
     *
     * @param open causes that stand now, the worst first
     * @param over causes that cleared in that time
     */
    public Content digest(List<OpenAlarm> open, List<OpenAlarm> over, Instant from, ZoneId zone) {
        String subject =
                "Your summary: " + count(open.size(), "alarm stands", "alarms stand") + ", " + over.size() + " over";
        List<Section> sections = List.of(
                new Section("Standing now", more(lines(open), open.size())),
                new Section("Over since " + AlarmWords.moment(from, zone), more(lines(over), over.size())));
        Map<String, Object> facts = new LinkedHashMap<>();
        facts.put("from", from.toString());
        facts.put("standing", open.stream().map(AlarmWords::facts).toList());
        facts.put("over", over.stream().map(AlarmWords::facts).toList());
        return content(
                subject,
                "What happened since " + AlarmWords.moment(from, zone) + ".",
                sections,
                links.page("All alarms", "/triage"),
                facts);
    }

    /** Shows that messages arrive. */
    public Content test(String person) {
        return content(
                "A test of your notices",
                "This is how notices reach you. Nothing is wrong.",
                List.of(new Section("Asked for by", List.of(person))),
                List.of(),
                new LinkedHashMap<>());
    }

    private static List<String> lines(List<OpenAlarm> alarms) {
        return alarms.stream()
                .limit(LISTED)
                .map(alarm -> AlarmWords.headline(alarm) + ", "
                        + alarm.severity().word() + ", " + AlarmWords.moment(alarm.began(), alarm.zone()))
                .toList();
    }

    private static List<String> more(List<String> lines, int all) {
        List<String> shown = new ArrayList<>(lines);
        if (all > shown.size()) {
            shown.add("and " + (all - shown.size()) + " more");
        }
        return shown.isEmpty() ? List.of("none") : shown;
    }

    private static String count(int count, String one, String more) {
        return count + " " + (count == 1 ? one : more);
    }

    private static String capital(String words) {
        return words.substring(0, 1).toUpperCase(java.util.Locale.ENGLISH) + words.substring(1);
    }

    private String mark() {
        return invented ? "[invented] " : "";
    }

    private Content content(
            String subject, String lead, List<Section> sections, List<Content.Link> to, Map<String, Object> facts) {
        List<Section> all = new ArrayList<>(sections);
        all.add(new Section("", List.of(links.change())));
        if (invented) {
            facts.put("invented", true);
            all.add(new Section("", List.of(INVENTED)));
        }
        String line = (mark() + subject).replaceAll("\\s+", " ");
        return new Content(line, lead, all, to, facts);
    }
}
