package org.roundsman.reports.document;

import io.quarkus.qute.RawString;
import java.util.List;
import org.roundsman.reports.chart.Picture;

/**
 * A part of a section.
 *
 * @param kind text, title, picture, table, compact (a table in little space), list or note; which of the others are filled
 *     follows from it
 * @param picture for a page, and for a PDF
 * @param columns titles of a table, each with where it stands
 */
record Part(
        String kind,
        String text,
        List<RawString> picture,
        List<Cell> columns,
        List<List<Cell>> rows,
        List<String> items) {

    static Part text(String text) {
        return plain("text", text);
    }

    /** The same, leading to what comes next. */
    Part leading() {
        return plain("lead", text);
    }

    static Part title(String text) {
        return plain("title", text);
    }

    /** Small print beneath a table. */
    static Part note(String text) {
        return plain("note", text);
    }

    static Part items(List<String> items) {
        return new Part("list", "", List.of(), List.of(), List.of(), items);
    }

    static Part picture(Picture picture) {
        return new Part(
                "picture",
                picture.title(),
                List.of(new RawString(picture.page()), new RawString(picture.paper())),
                List.of(),
                List.of(),
                List.of());
    }

    private static Part plain(String kind, String text) {
        return new Part(kind, text, List.of(), List.of(), List.of(), List.of());
    }

    public RawString forPage() {
        return picture.get(0);
    }

    public RawString forPaper() {
        return picture.get(1);
    }
}
