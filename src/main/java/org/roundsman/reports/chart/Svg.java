package org.roundsman.reports.chart;

import java.util.Locale;

/** Writes the shapes of one picture. Coordinates in pixels. */
final class Svg {

    /** Blue and vermilion of Okabe and Ito; each stands beside a number, a place or a pattern. */
    static final String BLUE = "#0072b2";

    static final String VERMILION = "#d55e00";
    static final String INK = "#111111";
    static final String SOFT = "#4a5a59";
    static final String LINE = "#8a9694";

    private static final int HATCH = 4;

    private final StringBuilder text = new StringBuilder();

    Svg box(double x, double y, double width, double height, String fill) {
        return rect(x, y, width, height, "fill=\"" + fill + "\"");
    }

    /** A box with a thin edge; a dotted one says that less is known. */
    Svg edged(double x, double y, double width, double height, String fill, boolean dotted) {
        String edge = " stroke=\"" + (dotted ? INK : LINE) + "\" stroke-width=\"0.7\"";
        return rect(
                x, y, width, height, "fill=\"" + fill + "\"" + edge + (dotted ? " stroke-dasharray=\"1.5 1.5\"" : ""));
    }

    private Svg rect(double x, double y, double width, double height, String look) {
        text.append("<rect x=\"").append(number(x)).append("\" y=\"").append(number(y));
        text.append("\" width=\"").append(number(width)).append("\" height=\"").append(number(height));
        text.append("\" ").append(look).append("/>");
        return this;
    }

    /** Slanted lines within a box, drawn one by one: not every maker of PDFs knows SVG's patterns. */
    Svg hatched(double x, double y, double width, double height) {
        StringBuilder path = new StringBuilder();
        for (double shift = -height + HATCH / 2.0; shift < width; shift += HATCH) {
            double left = Math.max(0, shift);
            double right = Math.min(width, shift + height);
            path.append('M').append(number(x + left)).append(' ').append(number(y + left - shift));
            path.append('L').append(number(x + right)).append(' ').append(number(y + right - shift));
        }
        text.append("<path d=\"")
                .append(path)
                .append("\" fill=\"none\" stroke=\"")
                .append(INK);
        text.append("\" stroke-width=\"0.7\"/>");
        return this;
    }

    Svg line(double x1, double y1, double x2, double y2, boolean dashed) {
        text.append("<path d=\"M")
                .append(number(x1))
                .append(' ')
                .append(number(y1))
                .append('L');
        text.append(number(x2)).append(' ').append(number(y2)).append("\" fill=\"none\" stroke=\"");
        text.append(dashed ? INK : LINE).append("\" stroke-width=\"").append(dashed ? "1" : "0.5");
        text.append(dashed ? "\" stroke-dasharray=\"4 3\"/>" : "\"/>");
        return this;
    }

    /** @param anchor start, middle or end */
    Svg words(double x, double y, double size, String anchor, String fill, String words) {
        text.append("<text x=\"").append(number(x)).append("\" y=\"").append(number(y));
        text.append("\" font-size=\"")
                .append(number(size))
                .append("\" text-anchor=\"")
                .append(anchor);
        text.append("\" fill=\"")
                .append(fill)
                .append("\">")
                .append(escaped(words))
                .append("</text>");
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

    /** As much of a name as fits. */
    static String brief(String name, int letters) {
        return name.codePointCount(0, name.length()) <= letters
                ? name
                : name.substring(0, name.offsetByCodePoints(0, letters - 1)) + "…";
    }

    @Override
    public String toString() {
        return text.toString();
    }
}
