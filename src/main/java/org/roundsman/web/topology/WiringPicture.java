package org.roundsman.web.topology;

import io.quarkus.qute.RawString;
import java.util.ArrayList;
import java.util.List;
import org.roundsman.web.chart.Svg;

/**
 * A site as a picture: a card for each device that carries others, what hangs on it indented below it, joined by a line that
 * begins at its card. On a card stands each access point with its port, a sign for the power of that port, the mark of its
 * condition and its name; what is wrong stands beside it in words.
 */
final class WiringPicture {

    private static final int WIDTH = 1_140;
    private static final int INDENT = 34;
    /** Beyond that cards are not made narrower: longer chains lose their steps, not their words. */
    private static final int DEEPEST = 9;

    private static final int CELL = 350;
    private static final int HEAD = 38;
    private static final int LINE = 26;
    private static final int FOOT = 8;
    private static final int GAP = 14;
    private static final int LONGEST_TAG = 10;
    /** Width of a character, near enough to tell what fits. */
    private static final double LETTER = 7.2;

    private static final double SMALL_LETTER = 6.4;

    private final List<Placed> cards = new ArrayList<>();

    /** A card with its place; above is null at the top. */
    private record Placed(Spot spot, Placed above, int x, int y, int tall) {
        int wide() {
            return WIDTH - x;
        }
    }

    private WiringPicture() {}

    static RawString of(String site, List<Spot> tops, List<Spot> unknown) {
        WiringPicture picture = new WiringPicture();
        int y = 0;
        for (Spot top : tops) {
            y = picture.lay(top, null, 0, y);
        }
        int height = unknown.isEmpty() ? y - GAP : y + HEAD + rows(unknown.size(), WIDTH) * LINE + FOOT;
        Svg svg = Svg.ofLinks("wiring", WIDTH + 2, Math.max(1, height) + 2)
                .described(
                        "wiring", "What hangs on what at " + site, "Each link says in words where its device hangs.");
        picture.cards.forEach(card -> wire(svg, card));
        picture.cards.forEach(card -> card(svg, card));
        if (!unknown.isEmpty()) {
            svg.box("card old", 1, y + 1, WIDTH - 2, HEAD + rows(unknown.size(), WIDTH) * LINE + FOOT - 2);
            svg.text("head", 14, y + 25, "Place not known yet");
            cells(svg, unknown, 0, y + HEAD, WIDTH);
        }
        return new RawString(svg.toString());
    }

    /** Lays a card and all below it; gives the y at which the next one begins. */
    private int lay(Spot spot, Placed above, int depth, int y) {
        int x = Math.min(depth, DEEPEST) * INDENT;
        int tall = HEAD + (leaves(spot).isEmpty() ? 0 : rows(leaves(spot).size(), WIDTH - x) * LINE + FOOT);
        Placed card = new Placed(spot, above, x, y, tall);
        cards.add(card);
        int next = y + tall + GAP;
        for (Spot child : spot.children().stream().filter(Spot::carries).toList()) {
            next = lay(child, card, depth + 1, next);
        }
        return next;
    }

    private static List<Spot> leaves(Spot spot) {
        return spot.children().stream().filter(child -> !child.carries()).toList();
    }

    private static int columns(int wide) {
        return Math.max(1, wide / CELL);
    }

    private static int rows(int cells, int wide) {
        return (cells + columns(wide) - 1) / columns(wide);
    }

    private static void wire(Svg svg, Placed card) {
        if (card.above != null) {
            int x = card.above.x + INDENT / 2;
            svg.path(
                    card.spot.place().old() ? "wire old" : "wire",
                    "M" + x + " " + (card.above.y + card.above.tall - 1) + "V" + (card.y + HEAD / 2) + "H"
                            + Math.max(card.x, x + INDENT / 2));
        }
    }

    private static void card(Svg svg, Placed card) {
        Spot spot = card.spot;
        svg.box("card", card.x + 1, card.y + 1, card.wide() - 2, card.tall - 2);
        int at = card.x + 12 + tag(svg, spot, card.x + 12, card.y + 6);
        svg.link("/devices/" + spot.id(), spot.words());
        mark(svg, spot, at, card.y + 12);
        svg.text("head", at + 21, card.y + 25, cut(spot.name(), 60)).end();
        String trouble = spot.trouble();
        svg.text(
                "soft right",
                WIDTH - 14,
                card.y + 25,
                cut(spot.kind() + (trouble.isEmpty() ? "" : ", " + trouble), 50));
        cells(svg, leaves(spot), card.x, card.y + HEAD, card.wide());
    }

    /** Draws the port, if there is one; gives the room that it takes. */
    private static int tag(Svg svg, Spot spot, int x, int y) {
        String tag = cut(spot.tag(), LONGEST_TAG);
        if (tag.isEmpty()) {
            return 0;
        }
        int wide = Math.max(24, (int) (10 + LETTER * tag.length()));
        svg.box(spot.place().old() ? "tag old" : "tag", x, y + 4, wide, LINE - 8);
        svg.text("small middle", x + wide / 2.0, y + LINE / 2 + 4, tag);
        return wide + 8;
    }

    private static void cells(Svg svg, List<Spot> spots, int x, int y, int wide) {
        int rows = Math.max(1, rows(spots.size(), wide));
        for (int i = 0; i < spots.size(); i++) {
            cell(svg, spots.get(i), x + i / rows * CELL, y + i % rows * LINE);
        }
    }

    private static void cell(Svg svg, Spot spot, int x, int y) {
        int middle = y + LINE / 2;
        int at = x + 12 + tag(svg, spot, x + 12, y);
        if (spot.known()) {
            power(svg, spot, at - 3, middle);
            at += 26;
        }
        String trouble = cut(spot.trouble(), 22);
        double room = x + CELL - 8 - (at + 20) - (trouble.isEmpty() ? 0 : SMALL_LETTER * trouble.length() + 8);
        svg.link("/devices/" + spot.id(), spot.words());
        mark(svg, spot, at, middle - 7);
        svg.text("name-of", at + 20, middle + 4, cut(spot.name(), (int) Math.max(6, room / LETTER)))
                .end();
        svg.text("small right", x + CELL - 8, middle + 4, trouble);
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

    private static String cut(String text, int most) {
        return text.length() <= most ? text : text.substring(0, most - 1) + "…";
    }
}
