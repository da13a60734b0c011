package org.roundsman.profiles;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.enterprise.event.TransactionPhase;
import jakarta.inject.Inject;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.Consumer;
import org.jboss.logging.Logger;
import org.roundsman.snmp.ProfileException;
import org.roundsman.snmp.ProfileFault;
import org.roundsman.snmp.ProfileSet;
import org.roundsman.snmp.ProfileText;
import org.roundsman.snmp.ProfileText.Origin;

/**
 * The profiles by which devices are read now: shipped ones, those in folders, and those that people wrote and put in use,
 * later ones winning by name. Thread-safe.
 */
@ApplicationScoped
public class ProfilesInUse {

    private static final Logger LOG = Logger.getLogger(ProfilesInUse.class);
    private static final String WRITTEN = "select p.name, v.text from written_profile p join profile_version v"
            + " on v.profile_id = p.id and v.number = p.version_in_use order by p.name";

    private final Sql sql;
    private final List<Consumer<ProfileSet>> listeners = new CopyOnWriteArrayList<>();
    private List<Path> folders = List.of();
    private volatile ProfileSet base;
    private volatile ProfileSet current;
    private volatile List<ProfileFault> leftOut = List.of();

    @Inject
    ProfilesInUse(Sql sql) {
        this.sql = sql;
    }

    /**
     * Reads all profiles for the first time.
     *
     * @param configured folders with profiles, from the settings
     * @throws ProfileException when a file has a fault; a written profile that has one by now is left out instead
     */
    public synchronized ProfileSet begin(List<Path> configured) {
        folders = List.copyOf(configured);
        base = ProfileSet.load(folders);
        return reload();
    }

    /** The profiles in use. */
    public ProfileSet current() {
        return current == null ? begin(folders) : current;
    }

    /** Those in use without what people wrote here. */
    public ProfileSet withoutWritten() {
        current();
        return base;
    }

    /** What keeps a written profile from being used though it was put in use, such as by an older release. */
    public List<ProfileFault> leftOut() {
        return leftOut;
    }

    /** Tells somebody of every change from now on. */
    public void whenChanged(Consumer<ProfileSet> listener) {
        listeners.add(listener);
    }

    void changed(@Observes(during = TransactionPhase.AFTER_SUCCESS) ProfilesChanged event) {
        reload();
    }

    private synchronized ProfileSet reload() {
        ProfileSet set = base == null ? ProfileSet.load(folders) : base;
        base = set;
        List<ProfileFault> faults = new ArrayList<>();
        for (ProfileText text : sql.list(
                WRITTEN, row -> new ProfileText(row.getString("name"), row.getString("text"), Origin.WRITTEN))) {
            try {
                set = set.with(text);
            } catch (ProfileException e) {
                faults.addAll(e.faults());
                LOG.warnf(
                        "The profile %s was put in use but cannot be read; it is left out: %s",
                        text.file(), e.getMessage());
            }
        }
        leftOut = List.copyOf(faults);
        current = set;
        ProfileSet used = set;
        listeners.forEach(listener -> listener.accept(used));
        return set;
    }
}
