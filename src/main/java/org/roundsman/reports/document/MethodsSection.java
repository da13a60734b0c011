package org.roundsman.reports.document;

import java.util.List;

/** How the figures are made, and when this was. */
final class MethodsSection {

    private static final List<String> NOTES = List.of(
            "methods.points",
            "methods.availability",
            "methods.coverage",
            "methods.service",
            "methods.outages",
            "methods.people",
            "methods.percentile",
            "methods.rooms");

    private MethodsSection() {}

    static Section of(Ink ink) {
        Section.Draft draft = ink.section("methods");
        NOTES.forEach(key -> draft.add(Part.note(ink.say(key))));
        List<String> zones = ink.report().sites().stream()
                .map(site -> site.zone().getId())
                .distinct()
                .sorted()
                .toList();
        if (!zones.isEmpty()) {
            draft.add(Part.note(ink.say("methods.zones", "zones", ink.formats().list(zones))));
        }
        draft.add(Part.note(ink.say(
                "methods.equipment", "moment", ink.formats().utc(ink.report().asOf()))));
        draft.add(Part.note(ink.say(
                "methods.made",
                "moment",
                ink.formats().utc(ink.look().printed()),
                "number",
                ink.look().revision(),
                "form",
                ink.report().form())));
        return draft.done();
    }
}
