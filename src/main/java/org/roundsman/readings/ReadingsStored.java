package org.roundsman.readings;

import java.util.List;
import org.roundsman.measure.Reading;

/**
 * These readings were committed just now. Fired on the thread that stores readings, which waits for its observers: they must
 * hand over at once. A reading may come twice, and one of a device that is gone may come too.
 *
 * @param readings in no certain order
 */
public record ReadingsStored(List<Reading> readings) {

    public ReadingsStored {
        readings = List.copyOf(readings);
    }
}
