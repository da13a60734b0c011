package org.roundsman.notices.text;

import java.util.List;
import java.util.Map;

/**
 * What a message says, before it is made a mail or the body of a webhook.
 *
 * @param subject one line
 * @param lead the most important, in one or two sentences
 * @param facts for programs: texts, numbers, lists and maps of them
 */
public record Content(
        String subject, String lead, List<Section> sections, List<Link> links, Map<String, Object> facts) {

    public Content {
        sections = List.copyOf(sections);
        links = List.copyOf(links);
    }

    /** A titled part with its lines. */
    public record Section(String title, List<String> lines) {
        public Section {
            lines = List.copyOf(lines);
        }
    }

    /** Where to go on. */
    public record Link(String words, String address) {}
}
