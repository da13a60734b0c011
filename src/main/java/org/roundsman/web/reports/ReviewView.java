package org.roundsman.web.reports;

import java.util.List;
import org.roundsman.web.page.Faults;

/**
 * What the firm's own people see beside a report and do with it.
 *
 * @param month address of the month's desk that it belongs to, or of the archive
 * @param busy it is being built or sent, so that the page looks again by itself
 * @param sends whether the person sends reports
 * @param failure why it could not be built or sent, or empty
 */
record ReviewView(
        String month,
        boolean busy,
        boolean sends,
        String failure,
        Acts acts,
        Steps steps,
        Entry entry,
        Sending sending) {

    /**
     * What can be done with it now.
     *
     * @param write its remark and its look can be changed
     * @param again send it to somebody else, or once more where it reached nobody
     * @param link open it without a sign-in
     */
    record Acts(
            boolean write, boolean approve, boolean reopen, boolean build, boolean send, boolean again, boolean link) {}

    /**
     * The way through the month.
     *
     * @param previous address of the report before it in the list, or empty
     * @param next address of the next one to review, or empty
     */
    record Steps(String previous, String next) {}

    /** What is entered, what was wrong in it, and what there is to choose. */
    record Entry(ReviewForm form, Faults faults, List<Choice> languages, List<Choice> papers) {}

    /**
     * Who gets it.
     *
     * @param recipients of the plan, as entered
     * @param plan address of the plan
     */
    record Sending(List<String> recipients, String plan, List<MailLine> mails, List<LinkLine> links) {}
}
