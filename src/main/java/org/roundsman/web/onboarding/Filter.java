package org.roundsman.web.onboarding;

import java.util.Arrays;
import java.util.Optional;
import org.roundsman.fleet.ImportOutcome;

/** Which rows of an import are shown, as it stands in the address. What cannot be read there shows all. */
record Filter(Optional<ImportOutcome> outcome, boolean moved) {

    static final Filter ALL = new Filter(Optional.empty(), false);
    static final Filter MOVED = new Filter(Optional.empty(), true);

    private static final String MOVED_WORD = "differently";
    private static final int LAST_PAGE = 1_000_000;

    static Filter of(ImportOutcome outcome) {
        return new Filter(Optional.of(outcome), false);
    }

    static Filter of(String word) {
        if (MOVED_WORD.equals(word)) {
            return MOVED;
        }
        return Arrays.stream(ImportOutcome.values())
                .filter(outcome -> outcome.word().equals(word))
                .findFirst()
                .map(Filter::of)
                .orElse(ALL);
    }

    static int page(String text) {
        try {
            int page = text == null ? 1 : Integer.parseInt(text.strip());
            return page >= 1 && page <= LAST_PAGE ? page : 1;
        } catch (NumberFormatException e) {
            return 1; // an address that was typed by hand: the first page is the better answer
        }
    }

    String link(long id, int page) {
        String word = moved ? MOVED_WORD : outcome.map(ImportOutcome::word).orElse("all");
        return "/onboarding/imports/" + id + "?outcome=" + word + (page == 1 ? "" : "&page=" + page);
    }
}
