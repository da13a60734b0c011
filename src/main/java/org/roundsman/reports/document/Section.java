package org.roundsman.reports.document;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.roundsman.reports.chart.Picture;

/** A section of the document. @param id also the anchor that sentences of the summary name */
record Section(String id, String heading, List<Part> parts) {

    /** Collects the parts of one. */
    static final class Draft {

        private final String id;
        private final Ink ink;
        private final List<Part> parts = new ArrayList<>();

        Draft(String id, Ink ink) {
            this.id = id;
            this.ink = ink;
        }

        Draft add(Part part) {
            parts.add(part);
            return this;
        }

        /** A paragraph of the catalogue's words. */
        Draft say(String key, Object... pairs) {
            return add(Part.text(ink.say(key, pairs)));
        }

        Draft title(String key) {
            return add(Part.title(ink.say(key)));
        }

        Draft picture(Optional<Picture> picture) {
            picture.ifPresent(one -> add(Part.picture(one)));
            return this;
        }

        /** Says how many lines a table had no room for. */
        Draft more(int all, int shown) {
            return all > shown ? add(Part.note(ink.say("more", "count", all - shown))) : this;
        }

        Section done() {
            return new Section(id, ink.say("section." + id), led());
        }

        /** What is said right before a picture or a table leads to it, and stays on its page. */
        private List<Part> led() {
            List<Part> led = new ArrayList<>(parts);
            for (int i = led.size() - 2; i >= 0; i--) {
                boolean leads = !led.get(i + 1).kind().equals("text");
                if (leads && led.get(i).kind().equals("text")) {
                    led.set(i, led.get(i).leading());
                }
            }
            return List.copyOf(led);
        }
    }
}
