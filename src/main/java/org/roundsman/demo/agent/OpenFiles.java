package org.roundsman.demo.agent;

import com.sun.management.UnixOperatingSystemMXBean;
import java.lang.management.ManagementFactory;
import org.roundsman.demo.AgentsNotStarted;

/** Whether the system lets this process hold enough sockets open. */
final class OpenFiles {

    /** For the rest of the program: jars, database, web. */
    private static final int SPARE = 200;

    private OpenFiles() {}

    static void check(int sockets) {
        if (ManagementFactory.getOperatingSystemMXBean() instanceof UnixOperatingSystemMXBean system) {
            check(sockets, system.getOpenFileDescriptorCount(), system.getMaxFileDescriptorCount());
        }
    }

    static void check(int sockets, long open, long limit) {
        long needed = open + sockets + SPARE;
        if (needed > limit) {
            throw new AgentsNotStarted(
                    sockets + " agents need " + needed + " open files, and this process may have " + limit
                            + ": run \"ulimit -n " + needed
                            + "\" in the same shell first, or start fewer access points",
                    null);
        }
    }
}
