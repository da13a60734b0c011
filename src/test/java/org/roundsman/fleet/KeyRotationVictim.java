package org.roundsman.fleet;

import java.nio.file.Path;
import java.time.Clock;
import java.util.concurrent.locks.LockSupport;
import org.roundsman.system.DataFolder;
import org.roundsman.system.DatabaseAddress;

/** A change of the key in a process of its own, which stands still at one moment until it is killed there. */
final class KeyRotationVictim {

    private KeyRotationVictim() {}

    /** Arguments: data folder, JDBC address, moment. */
    public static void main(String[] arguments) {
        DataFolder folder = DataFolder.at(Path.of(arguments[0]));
        DatabaseAddress database = new DatabaseAddress(arguments[1], "postgres", "postgres");
        KeyRotation.Moment end = KeyRotation.Moment.valueOf(arguments[2]);
        new KeyRotation(folder, database, Clock.systemUTC(), moment -> {
                    if (moment == end) {
                        System.out.println("AT " + moment);
                        System.out.flush();
                        while (true) {
                            LockSupport.park();
                        }
                    }
                })
                .rotate();
    }
}
