package org.roundsman.web.chart;

import java.util.Locale;

/**
 * Writes one SVG picture. Colours come from the style sheet by class, so that pictures follow light, dark and print.
 */
public final class Svg {

    private final StringBuilder text = new StringBuilder();
    private final String head;
    private String fit = "";
    private String label = "";

    Svg(String styleClass, int width, int height) {
        this(styleClass, width, height, "img");
    }

    private Svg(String styleClass, int width, int height, String role) {
        head = "<svg class=\"" + styleClass + "\" viewBox=\"0 0 " + width + " " + height + "\" role=\"" + role + "\"";
    }

    /** A picture whose parts can be followed: readers find its links, which one image would hide from them. */
    public static Svg ofLinks(String styleClass, int width, int height) {
        return new Svg(styleClass, width, height, "group\" width=\"" + width + "\" height=\"" + height);
    }

    /** The picture fills its place in both directions, even out of proportion. */
    Svg stretched() {
        fit = " preserveAspectRatio=\"none\"";
        return this;
    }

    public Svg described(String key, String title, String description) {
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

    public Svg path(String styleClass, CharSequence commands) {
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

    public Svg text(String styleClass, double x, double y, String words) {
        text.append("<text class=\"")
                .append(styleClass)
                .append("\" x=\"")
                .append(number(x))
                .append("\" y=\"");
        text.append(number(y)).append("\">").append(escaped(words)).append("</text>");
        return this;
    }

    /** Begins a link, which {@link #end} ends. */
    public Svg link(String address, String words) {
        text.append("<a href=\"").append(escaped(address)).append("\" aria-label=\"");
        text.append(escaped(words)).append("\">");
        return this;
    }

    public Svg end() {
        text.append("</a>");
        return this;
    }

    /** One of the page's symbols. */
    public Svg symbol(String styleClass, String id, double x, double y, int size) {
        text.append("<use class=\"")
                .append(styleClass)
                .append("\" href=\"#")
                .append(id)
                .append("\" x=\"");
        text.append(number(x))
                .append("\" y=\"")
                .append(number(y))
                .append("\" width=\"")
                .append(size);
        text.append("\" height=\"").append(size).append("\"/>");
        return this;
    }

    /** A box with round corners. */
    public Svg box(String styleClass, double x, double y, double width, double height) {
        text.append("<rect class=\"")
                .append(styleClass)
                .append("\" x=\"")
                .append(number(x))
                .append("\" y=\"");
        text.append(number(y)).append("\" width=\"").append(number(width)).append("\" height=\"");
        text.append(number(height)).append("\" rx=\"4\"/>");
        return this;
    }

    static String number(double value) {
        String digits = String.format(Locale.ROOT, "%.1f", value);
        return digits.endsWith(".0") ? digits.substring(0, digits.length() - 2) : digits;
    }

    public static String escaped(String words) {
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
