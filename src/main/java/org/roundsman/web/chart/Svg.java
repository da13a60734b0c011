package org.roundsman.web.chart;

import java.util.Locale;

/** Writes one SVG picture. Colours come from the style sheet by class, so that pictures follow light, dark and print. */
final class Svg {

    private final StringBuilder text = new StringBuilder();
    private final String head;
    private String fit = "";
    private String label = "";

    Svg(String styleClass, int width, int height) {
        head = "<svg class=\"" + styleClass + "\" viewBox=\"0 0 " + width + " " + height + "\" role=\"img\"";
    }

    /** The picture fills its place in both directions, even out of proportion. */
    Svg stretched() {
        fit = " preserveAspectRatio=\"none\"";
        return this;
    }

    Svg described(String key, String title, String description) {
        label = " aria-labelledby=\"" + key + "-t " + key + "-d\"";
        text.append("<title id=\"")
                .append(key)
                .append("-t\">")
                .append(escaped(title))
                .append("</title>");
        text.append("<desc id=\"")
                .append(key)
                .append("-d\">")
                .append(escaped(description))
                .append("</desc>");
        return this;
    }

    Svg path(String styleClass, CharSequence commands) {
        if (!commands.isEmpty()) {
            text.append("<path class=\"")
                    .append(styleClass)
                    .append("\" d=\"")
                    .append(commands)
                    .append("\"/>");
        }
        return this;
    }

    /** A path filled with the page's hatch. */
    Svg hatched(String styleClass, CharSequence commands) {
        if (!commands.isEmpty()) {
            text.append("<path class=\"").append(styleClass).append("\" fill=\"url(#hatch)\" d=\"");
            text.append(commands).append("\"/>");
        }
        return this;
    }

    Svg text(String styleClass, double x, double y, String words) {
        text.append("<text class=\"")
                .append(styleClass)
                .append("\" x=\"")
                .append(number(x))
                .append("\" y=\"");
        text.append(number(y)).append("\">").append(escaped(words)).append("</text>");
        return this;
    }

    static String number(double value) {
        String digits = String.format(Locale.ROOT, "%.1f", value);
        return digits.endsWith(".0") ? digits.substring(0, digits.length() - 2) : digits;
    }

    static String escaped(String words) {
        return words.replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace(">", "&gt;")
                .replace("\"", "&quot;")
                .replace("'", "&#39;");
    }

    @Override
    public String toString() {
        return head + fit + label + ">" + text + "</svg>";
    }
}
