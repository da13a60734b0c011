package org.roundsman.reports;

/**
 * The mail that a report comes with.
 *
 * @param text the same as {@code html} in plain text
 * @param html with its styles within, since readers of mail load none
 */
public record ReportMail(String subject, String text, String html) {}
