package org.roundsman.topology;

import java.time.Clock;
import javax.sql.DataSource;

/** The store of wiring with the default settings, outside of the container. */
public final class PlainWiring {

    private PlainWiring() {}

    public static WiringStore store(DataSource database, Clock clock) {
        return new WiringStore(database, new TestSettings(), clock);
    }
}
