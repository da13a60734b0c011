package org.roundsman.notices.text;

import java.util.List;

/** A message as the text and the HTML of a mail. */
public final class MailText {

    private MailText() {}

    public static String plain(Content content) {
        StringBuilder text = new StringBuilder(content.lead()).append("\n");
        for (Content.Section section : content.sections()) {
            text.append('\n');
            if (!section.title().isEmpty()) {
                text.append(section.title()).append(":\n");
            }
            section.lines().forEach(line -> text.append(section.title().isEmpty() ? "" : "  ")
                    .append(line)
                    .append('\n'));
        }
        if (!content.links().isEmpty()) {
            text.append('\n');
            content.links().forEach(link -> text.append(link.words())
                    .append(": ")
                    .append(link.address())
                    .append('\n'));
        }
        return text.toString();
    }

    public static String html(Content content) {
        StringBuilder html = new StringBuilder(
                        "<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"><title>")
                .append(safe(content.subject()))
                .append("</title></head><body>\n<p><strong>")
                .append(safe(content.lead()))
                .append("</strong></p>\n");
        content.sections().forEach(section -> section(html, section));
        if (!content.links().isEmpty()) {
            html.append("<ul>\n");
            content.links().forEach(link -> html.append("<li><a href=\"")
                    .append(safe(link.address()))
                    .append("\">")
                    .append(safe(link.words()))
                    .append("</a></li>\n"));
            html.append("</ul>\n");
        }
        return html.append("</body></html>\n").toString();
    }

    private static void section(StringBuilder html, Content.Section section) {
        if (section.title().isEmpty()) {
            section.lines()
                    .forEach(line -> html.append("<p>").append(safe(line)).append("</p>\n"));
            return;
        }
        html.append("<h2>").append(safe(section.title())).append("</h2>\n<ul>\n");
        List<String> lines = section.lines();
        lines.forEach(line -> html.append("<li>").append(safe(line)).append("</li>\n"));
        html.append("</ul>\n");
    }

    private static String safe(String text) {
        return text.replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace(">", "&gt;")
                .replace("\"", "&quot;")
                .replace("'", "&#39;");
    }
}
