package org.roundsman.reports.document;

import java.util.List;
import org.roundsman.reports.Sentence;

/**
 * What the mail about a report says.
 *
 * @param text the same without HTML
 * @param colour of headings, dark enough to read on white
 * @param columns titles of the table of key figures
 * @param rows one a site
 * @param link where the report can be fetched, or empty
 */
record MailView(
        String subject,
        String text,
        String language,
        String colour,
        String greeting,
        String intro,
        List<Sentence> sentences,
        String remarkTitle,
        List<String> remark,
        String figuresTitle,
        List<Cell> columns,
        List<List<Cell>> rows,
        String more,
        String linkWords,
        String link,
        String invented,
        List<String> closing) {}
