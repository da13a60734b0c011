package org.roundsman.firmware;

import java.util.List;
import org.roundsman.catalogue.FirmwareLine;

/**
 * All that is decided about a line of firmware.
 *
 * @param pattern regular expression of the line; empty with other schemes
 * @param models that take firmware of this line, by name
 */
public record LinePolicy(
        long lineId,
        String line,
        FirmwareLine.Scheme scheme,
        String pattern,
        List<ModelOf> models,
        List<Release> releases,
        List<SecurityMinimum> minimums,
        List<PilotSite> pilots,
        List<PolicyException> exceptions) {

    public LinePolicy {
        models = List.copyOf(models);
        releases = List.copyOf(releases);
        minimums = List.copyOf(minimums);
        pilots = List.copyOf(pilots);
        exceptions = List.copyOf(exceptions);
    }

    /** A model that takes firmware of the line. */
    public record ModelOf(long id, String name) {}

    /** A site that runs the pilot release first. */
    public record PilotSite(long siteId, String site, long customerId, String customer) {}

    public VersionScheme versions() {
        return VersionScheme.of(scheme, pattern);
    }

    /** Whether nothing at all is decided about it. */
    public boolean empty() {
        return releases.isEmpty() && minimums.isEmpty();
    }
}
