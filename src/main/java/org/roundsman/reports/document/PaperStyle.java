package org.roundsman.reports.document;

import org.roundsman.reports.ReportLook;

/** The part of a PDF's style that follows from its look: size of the sheet, words of the page numbers, colours. */
final class PaperStyle {

    private static final String PAGE = "\u0001";
    private static final String PAGES = "\u0002";

    private PaperStyle() {}

    static String of(Ink ink) {
        String size = ink.look().paper() == ReportLook.PaperSize.A4 ? "210mm 297mm" : "215.9mm 279.4mm";
        String head = Contrast.readable(ink.look().firm().colour());
        String rule = ink.look().customer().colour().isEmpty()
                ? head
                : Contrast.readable(ink.look().customer().colour());
        return "@page { size: " + size
                + "; margin: 13mm 14mm 17mm; @bottom-left { content: element(foot); width: 152mm; }"
                + " @bottom-right { content: " + numbers(ink)
                + "; font: 8pt Figtree; color: #444; width: 28mm; text-align: right; white-space: nowrap; } }\n"
                + "h1, h2 { color: " + head + "; }\n"
                + ".rule { border-bottom-color: " + rule + "; }\n";
    }

    /** "Page 2 of 5" as CSS, with counters in place of the figures. */
    private static String numbers(Ink ink) {
        String words = ink.say("foot.page", "page", PAGE, "pages", PAGES).replaceAll("[\"\\\\<>&]", "");
        String content =
                "\"" + words.replace(PAGE, "\" counter(page) \"").replace(PAGES, "\" counter(pages) \"") + "\"";
        return content.replace("\"\"", "");
    }
}
