package org.roundsman.web.triage;

import java.util.List;

/**
 * The list of alarms, which refreshes itself.
 *
 * @param lines causes that need somebody, the most urgent first
 * @param shelved put aside by somebody
 * @param planned in planned work, so that nobody need act
 * @param cleared over since an hour at most
 * @param more what is left out of the lines, or empty
 * @param quiet what to say when nothing needs anybody
 * @param behind how far the picture is behind, or empty
 * @param chosen id of the alarm beside the list, 0 for none
 */
record TriageList(
        List<TriageLine> lines,
        String more,
        List<TriageLine> shelved,
        List<TriageLine> planned,
        List<TriageLine> cleared,
        Quiet quiet,
        String behind,
        long chosen) {

    /** What an empty list says. */
    record Quiet(String title, String text) {}

    /** A list that is folded away under the main one. */
    record Fold(String key, String title, List<TriageLine> lines) {}

    /** Those that hold something. */
    public List<Fold> folds() {
        return java.util.stream.Stream.of(
                        new Fold("planned", "In planned work", planned),
                        new Fold("shelved", "Shelved", shelved),
                        new Fold("cleared", "Cleared within the last hour", cleared))
                .filter(fold -> !fold.lines().isEmpty())
                .toList();
    }

    /** How many need somebody, in words. */
    public String count() {
        return lines.size() == 1 ? "1 cause" : lines.size() + " causes";
    }

    /** Changes with whatever is shown. */
    public String stamp() {
        return Integer.toHexString(hashCode());
    }
}
