package org.roundsman.reports.document;

import io.quarkus.qute.RawString;
import java.util.List;
import org.roundsman.reports.Sentence;

/**
 * What the templates of a report show.
 *
 * @param paper for a PDF; else for a page of ours, whose policy allows no style within
 * @param language BCP 47
 * @param remark paragraphs of the account manager
 * @param revised says which revision this is, or empty for the first
 * @param invented says that all data is made up, or empty
 * @param foot of every page
 * @param firm who looks after the Wi-Fi
 * @param customer whose it is
 */
record ReportView(
        boolean paper,
        String language,
        String title,
        String subject,
        List<Section> sections,
        List<Sentence> sentences,
        String remarkTitle,
        List<String> remark,
        String revised,
        String invented,
        String foot,
        Face firm,
        Face customer,
        RawString style) {

    /**
     * Somebody's name and logo.
     *
     * @param logo as a data URI, or empty
     */
    record Face(String name, RawString logo, boolean pictured, List<String> lines) {}
}
