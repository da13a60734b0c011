package org.roundsman.reports.chart;

/**
 * One SVG picture with its words. Colours and sizes stand in presentation attributes, so that a page with a strict content
 * security policy shows it, and a PDF as well.
 *
 * @param title what it shows
 * @param description what can be seen in it, for those who do not see it
 * @param height in pixels; each is {@link #WIDTH} wide
 * @param body SVG within the root element
 */
public record Picture(String title, String description, int height, String body) {

    /** Pixels of CSS: 180 mm on paper. */
    public static final int WIDTH = 680;

    /** For a page: SVG 2 takes name and description from within. */
    public String page() {
        return root("role=\"img\"") + "<title>" + Svg.escaped(title) + "</title><desc>" + Svg.escaped(description)
                + "</desc>" + body + "</svg>";
    }

    /** For a PDF, whose maker takes the description from an attribute. */
    public String paper() {
        return root("role=\"img\" alt=\"" + Svg.escaped(title + ". " + description) + "\"") + body + "</svg>";
    }

    private String root(String more) {
        return "<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"report-picture\" " + more + " width=\"" + WIDTH
                + "\" height=\"" + height + "\" viewBox=\"0 0 " + WIDTH + " " + height
                + "\" font-family=\"Figtree, sans-serif\">";
    }
}
