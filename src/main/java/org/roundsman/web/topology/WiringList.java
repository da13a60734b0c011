package org.roundsman.web.topology;

import io.quarkus.qute.RawString;
import java.util.List;
import org.roundsman.web.chart.Svg;

/** The picture as a nested list, for phones, print and those who want words. What has no kind beside it is an access point. */
final class WiringList {

    private final StringBuilder text = new StringBuilder();

    private WiringList() {}

    static RawString of(List<Spot> tops, List<Spot> unknown) {
        WiringList list = new WiringList();
        list.level(tops);
        if (!unknown.isEmpty()) {
            list.text.append("<h3>Place not known yet</h3>");
            list.level(unknown);
        }
        return new RawString(list.text.toString());
    }

    private void level(List<Spot> spots) {
        if (spots.isEmpty()) {
            return;
        }
        text.append("<ul>");
        for (Spot spot : spots) {
            text.append("<li><span class=\"state ").append(spot.state().word()).append("\">");
            text.append("<svg class=\"mark\" aria-hidden=\"true\" focusable=\"false\"><use href=\"#mark-");
            text.append(spot.state().word())
                    .append("\"/></svg><span><a href=\"/devices/")
                    .append(spot.id());
            text.append("\">")
                    .append(Svg.escaped(spot.name()))
                    .append("</a>, ")
                    .append(spot.node().accessPoint() ? "" : spot.kind() + ", ");
            text.append(Svg.escaped(spot.state().text())).append("</span></span>");
            place(spot);
            level(spot.children());
            text.append("</li>");
        }
        text.append("</ul>");
    }

    private void place(Spot spot) {
        StringBuilder under = new StringBuilder();
        if (spot.known()) {
            under.append("on ")
                    .append(spot.place().portTitle())
                    .append(" (")
                    .append(spot.known(spot.now()))
                    .append(")");
        }
        if (!spot.line().isEmpty()) {
            under.append(": ").append(spot.line());
        }
        if (!under.isEmpty()) {
            text.append("<span class=\"under\">")
                    .append(Svg.escaped(under.toString()))
                    .append("</span>");
        }
    }
}
