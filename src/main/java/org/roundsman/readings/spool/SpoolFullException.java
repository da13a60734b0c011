package org.roundsman.readings.spool;

import java.io.IOException;
import java.nio.file.Path;

/** The bound on waiting readings is reached. */
public final class SpoolFullException extends IOException {

    private static final long serialVersionUID = 1L;

    SpoolFullException(Path folder, long bound) {
        super("the folder " + folder + " holds as much as it may (" + bound + " octets)");
    }
}
