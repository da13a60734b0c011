package org.roundsman.profiles;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.locks.ReentrantLock;
import org.roundsman.snmp.ProfileException;
import org.roundsman.snmp.ProfileSet;
import org.roundsman.snmp.ProfileText;
import org.roundsman.snmp.ProfileText.Origin;
import org.roundsman.snmp.Snapshot;
import org.roundsman.snmp.UnusedGroup;
import org.roundsman.snmp.WalkReading;
import org.roundsman.snmp.WalkVisit;

/** Tells what profiles make of stored walks. Thread-safe; reads one walk at a time, since a walk may be large. */
@ApplicationScoped
public class Workbench {

    private final StoredWalks walks;
    private final ProfilesInUse profiles;
    private final ReentrantLock turn = new ReentrantLock(true);

    @Inject
    Workbench(StoredWalks walks, ProfilesInUse profiles) {
        this.walks = walks;
        this.profiles = profiles;
    }

    /** What the profiles in use make of a walk. */
    public WalkReading read(StoredWalk stored) {
        return read(stored, profiles.current());
    }

    /** What a set of profiles makes of a walk. */
    public WalkReading read(StoredWalk stored, ProfileSet set) {
        turn.lock();
        try {
            List<Snapshot> snapshots = walks.snapshots(stored);
            return WalkVisit.read(snapshots.get(0), snapshots.stream().skip(1).findFirst(), set);
        } finally {
            turn.unlock();
        }
    }

    /**
     * The profiles in use with one more text, which is not saved.
     *
     * @throws ProfileException when the text has a fault
     */
    public ProfileSet with(String text) {
        String name = WrittenProfiles.nameIn(text).orElse("profile");
        return profiles.current().with(new ProfileText(name, text, Origin.WRITTEN));
    }

    /** The table or group of scalars at that place in a walk, whatever profiles say. */
    public Optional<UnusedGroup> group(StoredWalk stored, String oid) {
        turn.lock();
        try {
            return WalkVisit.groups(walks.snapshots(stored).get(0).walk()).stream()
                    .filter(group -> group.oid().equals(oid))
                    .findFirst();
        } finally {
            turn.unlock();
        }
    }
}
