package org.roundsman.reports.document;

import java.util.List;
import java.util.Set;
import org.roundsman.reports.Recommendation;
import org.roundsman.reports.Recommendation.Kind;

/** What we recommend, with the figures that it rests on. */
final class AdviceSection {

    private static final int MOST = 15;

    private static final Set<Kind> PRICED = Set.of(Kind.ADD_ACCESS_POINT, Kind.REPLACE_PAST_SUPPORT, Kind.RENEW_COVER);

    private static final Set<Kind> NAMED = Set.of(Kind.LOOK_AT_DEVICE, Kind.LOOK_AT_DEVICES, Kind.ADD_ACCESS_POINT);

    private AdviceSection() {}

    static Section of(Ink ink) {
        List<Recommendation> all = ink.report().recommendations();
        Section.Draft draft = ink.section("advice");
        if (all.isEmpty()) {
            return draft.say("advice.none").done();
        }
        return draft.say("advice.intro")
                .add(Part.items(
                        all.stream().limit(MOST).map(one -> words(ink, one)).toList()))
                .more(all.size(), MOST)
                .done();
    }

    private static String words(Ink ink, Recommendation one) {
        String text = ink.say(
                "advice." + one.kind().name(),
                "what",
                one.what().isBlank() ? one.site() : one.what(),
                "where",
                where(ink, one),
                "count",
                one.count(),
                "figure",
                ink.percent(one.figure()),
                "time",
                ink.formats().time(one.time()),
                "day",
                one.day().map(ink.formats()::day).orElse(ink.say("not.known")));
        return text + cost(ink, one);
    }

    /** Where, in brackets, with the gap before it; where the devices are several, which model. */
    private static String where(Ink ink, Recommendation one) {
        boolean whatSaid = NAMED.contains(one.kind());
        String place = one.site().isBlank() && !whatSaid ? one.what() : one.site();
        return place.isBlank() ? "" : " " + ink.say("advice.where", "site", place);
    }

    private static String cost(Ink ink, Recommendation one) {
        if (!ink.look().costs() || !PRICED.contains(one.kind())) {
            return "";
        }
        return " "
                + (one.cost().isEmpty()
                        ? ink.say("advice.unpriced")
                        : ink.say("advice.cost", "cost", ink.formats().money(one.cost())));
    }
}
