package org.roundsman.web.reports;

import io.quarkus.qute.RawString;
import java.util.List;

/**
 * One report as its page shows it.
 *
 * @param period of which days it is, in words
 * @param newest no later revision is there
 * @param facts what is to be known about it
 * @param document what it says, in its own language; null before it is built
 * @param revisions all that there are, the newest first
 * @param tables to download
 * @param review what we do with it; null for a customer's own people
 */
record ReportView(
        long id,
        String customer,
        String period,
        StateWord state,
        boolean newest,
        List<Fact> facts,
        RawString document,
        List<Revision> revisions,
        List<Download> tables,
        ReviewView review) {

    /** Something to know about it. */
    record Fact(String name, String value) {}

    /** A revision in the list. */
    record Revision(long id, String words, boolean here) {}

    /** A table to download. */
    record Download(String name, String link) {}

    /** Whether there is more than one. */
    public boolean revised() {
        return revisions.size() > 1;
    }
}
