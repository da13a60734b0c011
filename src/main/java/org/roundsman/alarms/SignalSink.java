package org.roundsman.alarms;

import java.util.List;

/** Where signals go: to the alarms, or, when settings are tried out over the past, to a tally. */
@FunctionalInterface
public interface SignalSink {

    /** Takes signals in the order in which things happened. */
    void accept(List<Signal> signals);
}
