package org.roundsman.triage;

import io.smallrye.config.ConfigMapping;
import io.smallrye.config.WithDefault;

/** Keys under {@code roundsman.triage}. */
@ConfigMapping(prefix = "roundsman.triage")
public interface TriageConfig {

    /** Whether silent devices raise alarms and causes are worked out. */
    @WithDefault("true")
    boolean enabled();
}
