package org.roundsman.polling;

import org.roundsman.measure.Reading;

/**
 * Where readings go. Called from the threads that receive replies.
 */
public interface ReadingSink {

    /**
     * Takes a reading over. Never blocks on the database and never throws; what cannot be stored yet waits.
     */
    void accept(Reading reading);
}
