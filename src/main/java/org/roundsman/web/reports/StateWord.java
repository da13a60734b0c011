package org.roundsman.web.reports;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import org.roundsman.dispatch.KeptReport;
import org.roundsman.dispatch.ReportState;

/**
 * How far a report is, as it is shown: a shape and a word, never the colour alone.
 *
 * @param key name of the shape, and of the state in addresses
 */
record StateWord(String key, String word) {

    /** There is no report yet. */
    static final StateWord NONE = new StateWord("none", "not built");

    static StateWord of(ReportState state) {
        return new StateWord(state.name().toLowerCase(Locale.ROOT).replace('_', '-'), state.word());
    }

    static StateWord of(Optional<KeptReport> report) {
        return report.map(one -> of(one.state())).orElse(NONE);
    }

    /** The state of that key. */
    static Optional<ReportState> find(String key) {
        return Arrays.stream(ReportState.values())
                .filter(state -> of(state).key.equals(key))
                .findFirst();
    }
}
