package org.roundsman.web.topology;

import io.quarkus.qute.RawString;
import java.util.ArrayList;
import java.util.List;
import org.roundsman.web.chart.Svg;

/**
 * A site as a picture, from the gateway on the left to the access points: a card for each device that carries others, with
 * one line for each port in use. A line has the port, a sign for its power, the mark of the condition and the name; what is
 * wrong stands beside it in words.
 */
final class WiringPicture {

    private static final int CARD = 560;
    private static final int HALF = CARD / 2;
    private static final int HEAD = 38;
    private static final int LINE = 26;
    private static final int FOOT = 8;
    private static final int GAP = 18;
    private static final int GUTTER = 46;
    private static final int STEP = 4;
    private static final int LONGEST_NAME = 27;
    private static final int LONGEST_TAG = 8;

    private final List<Placed> cards = new ArrayList<>();
    private int width;
    private int height;

    /** A card with its place. */
    private record Placed(Spot spot, int x, int y, int tall) {}

    private WiringPicture() {}

    static RawString of(String site, List<Spot> tops, List<Spot> unknown) {
        WiringPicture picture = new WiringPicture();
        int y = 0;
        for (Spot top : tops) {
            y = picture.lay(top, 0, y) + GAP;
        }
        int aside = y;
        int lines = (unknown.size() + 1) / 2;
        picture.height = Math.max(aside - GAP, unknown.isEmpty() ? 0 : aside + HEAD + lines * LINE + FOOT);
        picture.width = Math.max(picture.width, CARD);
        Svg svg = Svg.ofLinks("wiring", picture.width + 2, Math.max(1, picture.height) + 2)
                .described("wiring", "What hangs on what at " + site, describe(tops, unknown));
        picture.edges(svg);
        picture.cards.forEach(card -> card(svg, card));
        if (!unknown.isEmpty()) {
            stray(svg, unknown, aside);
        }
        return new RawString(svg.toString());
    }

    private static String describe(List<Spot> tops, List<Spot> unknown) {
        return "The list below says the same in words. " + tops.size() + " at the top, place not known of "
                + unknown.size() + ".";
    }

    /** Lays a card and all below it; gives the y at which that block ends. */
    private int lay(Spot spot, int x, int y) {
        int tall = HEAD + lines(spot) * LINE + FOOT;
        cards.add(new Placed(spot, x, y, tall));
        width = Math.max(width, x + CARD);
        int below = y;
        for (Spot child : heads(spot)) {
            below = lay(child, x + CARD + GUTTER, below) + GAP;
        }
        return Math.max(y + tall, below - GAP);
    }

    private static List<Spot> heads(Spot spot) {
        return spot.children().stream().filter(Spot::carries).toList();
    }

    private static List<Spot> leaves(Spot spot) {
        return spot.children().stream().filter(child -> !child.carries()).toList();
    }

    private static int lines(Spot spot) {
        return heads(spot).size() + (leaves(spot).size() + 1) / 2;
    }

    private void edges(Svg svg) {
        for (Placed card : cards) {
            List<Spot> heads = heads(card.spot);
            for (int i = 0; i < heads.size(); i++) {
                Spot head = heads.get(i);
                Placed to =
                        cards.stream().filter(c -> c.spot == head).findFirst().orElseThrow();
                int from = card.x + CARD;
                int fromY = card.y + HEAD + i * LINE + LINE / 2;
                int bend = from + 12 + STEP * (i % 7);
                svg.path(
                        head.place().old() ? "wire old" : "wire",
                        "M" + from + " " + fromY + "H" + bend + "V" + (to.y + HEAD / 2) + "H" + to.x);
            }
        }
    }

    private static void card(Svg svg, Placed card) {
        Spot spot = card.spot;
        svg.box("card", card.x + 1, card.y + 1, CARD - 2, card.tall - 2);
        svg.link("/devices/" + spot.id(), spot.words());
        mark(svg, spot, card.x + 14, card.y + 12);
        svg.text("head", card.x + 36, card.y + 25, cut(spot.name(), 40)).end();
        svg.text("soft right", card.x + CARD - 14, card.y + 25, heading(spot));
        int y = card.y + HEAD;
        for (Spot head : heads(spot)) {
            line(svg, head, card.x, y);
            y += LINE;
        }
        List<Spot> leaves = leaves(spot);
        int rows = (leaves.size() + 1) / 2;
        for (int i = 0; i < leaves.size(); i++) {
            line(svg, leaves.get(i), card.x + (i / rows) * HALF, y + (i % rows) * LINE);
        }
    }

    private static String heading(Spot spot) {
        String trouble = spot.trouble();
        return spot.kind() + (trouble.isEmpty() ? "" : ", " + trouble);
    }

    private static void line(Svg svg, Spot spot, int x, int y) {
        int middle = y + LINE / 2;
        String tag = cut(spot.tag(), LONGEST_TAG);
        int wide = Math.max(24, 10 + 7 * tag.length());
        svg.box(spot.place().old() ? "tag old" : "tag", x + 12, y + 4, wide, LINE - 8);
        svg.text("small middle", x + 12 + wide / 2.0, middle + 4, tag);
        power(svg, spot, x + 16 + wide, middle);
        int at = x + 42 + wide;
        svg.link("/devices/" + spot.id(), spot.words());
        mark(svg, spot, at, middle - 7);
        String trouble = spot.carries() ? "" : spot.trouble();
        int room = LONGEST_NAME - tag.length() - (trouble.isEmpty() ? 0 : Math.min(16, trouble.length() + 1));
        svg.text("name-of", at + 20, middle + 4, cut(spot.name(), Math.max(8, room)))
                .end();
        if (!trouble.isEmpty()) {
            svg.text("small right", x + HALF - 6, middle + 4, cut(trouble, 22));
        }
    }

    /** A bolt delivers, with the class beside it; a ring waits; a bar is switched off; a cross is a fault. */
    private static void power(Svg svg, Spot spot, int x, int middle) {
        if (!spot.powerSign().isEmpty()) {
            svg.symbol("power " + spot.powerSign(), "power-" + spot.powerSign(), x, middle - 7, 14);
            svg.text("small", x + 15, middle + 4, spot.powerClass());
        }
    }

    private static void mark(Svg svg, Spot spot, int x, int y) {
        svg.symbol("spot-" + spot.state().word(), "mark-" + spot.state().word(), x, y, 14);
    }

    /** Devices of which nothing is known. */
    private static void stray(Svg svg, List<Spot> unknown, int y) {
        int rows = (unknown.size() + 1) / 2;
        svg.box("card old", 1, y + 1, CARD - 2, HEAD + rows * LINE + FOOT - 2);
        svg.text("head", 14, y + 25, "Place not known yet");
        for (int i = 0; i < unknown.size(); i++) {
            Spot spot = unknown.get(i);
            int x = (i / rows) * HALF;
            int middle = y + HEAD + (i % rows) * LINE + LINE / 2;
            svg.link("/devices/" + spot.id(), spot.words());
            mark(svg, spot, x + 14, middle - 7);
            String trouble = spot.trouble();
            svg.text("name-of", x + 34, middle + 4, cut(spot.name(), trouble.isEmpty() ? 30 : 20))
                    .end();
            svg.text("small right", x + HALF - 6, middle + 4, cut(trouble, 22));
        }
    }

    private static String cut(String text, int most) {
        return text.length() <= most ? text : text.substring(0, most - 1) + "…";
    }
}
