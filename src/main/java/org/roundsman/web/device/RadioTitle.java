package org.roundsman.web.device;

import org.roundsman.measure.Metric;
import org.roundsman.measure.RadioReading;
import org.roundsman.web.page.Words;

/** What a radio is called above its charts. */
final class RadioTitle {

    private RadioTitle() {}

    static String of(RadioReading radio) {
        boolean band = radio.values().has(Metric.BAND);
        return "Radio " + radio.number()
                + (band ? ", " + Words.figure(radio.values().get(Metric.BAND), 1, "GHz") : "");
    }
}
