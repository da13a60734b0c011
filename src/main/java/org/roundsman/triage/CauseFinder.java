package org.roundsman.triage;

import java.util.List;
import org.roundsman.triage.find.Search;

/**
 * Finds out why devices of a site are silent: the highest silent element that explains all silent ones below it is the
 * cause. A pure function; what it goes by is written down in docs/decisions/0015-cause-and-impact.md.
 */
public final class CauseFinder {

    private CauseFinder() {}

    /**
     * One finding for each silent device, for the site when all of it was lost, and for a device that is not silent yet but
     * must be the cause of others' silence. Causes come before what they explain. Empty when no device is silent.
     */
    public static List<Finding> find(SiteSituation situation) {
        return new Search(situation).findings();
    }
}
