package org.roundsman.demo;

import java.time.LocalDate;
import java.util.Set;

/** Port: which UTC days of the invented past are stored, so that a back-fill goes on where it was cut short. */
public interface HistoryProgress {

    Set<LocalDate> finished();

    /** Remembers a day for good; a second time changes nothing. */
    void finish(LocalDate day);
}
