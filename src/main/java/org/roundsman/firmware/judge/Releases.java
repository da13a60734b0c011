package org.roundsman.firmware.judge;

import java.util.Collection;
import java.util.HashMap;
import java.util.Map;
import org.roundsman.firmware.LinePolicy;
import org.roundsman.firmware.Version;
import org.roundsman.firmware.VersionScheme;

/**
 * Tells releases of lines apart, however devices write them: versions at the same place in the order of their line are one
 * release. For one thread.
 */
public final class Releases {

    private final Map<Long, VersionScheme> schemes = new HashMap<>();
    private final Map<String, Object> known = new HashMap<>();

    public Releases(Collection<LinePolicy> policies) {
        policies.forEach(policy -> schemes.put(policy.lineId(), policy.versions()));
    }

    /** Equal for two versions of a line that are the same release. One that cannot be read is the same as its own text only. */
    public Object of(long line, String version) {
        return known.computeIfAbsent(line + "/" + version, made -> mark(line, version));
    }

    private Object mark(long line, String version) {
        VersionScheme scheme = schemes.get(line);
        return scheme != null && scheme.read(version) instanceof Version.Read read ? read.marks() : version;
    }
}
