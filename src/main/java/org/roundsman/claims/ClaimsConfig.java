package org.roundsman.claims;

import io.smallrye.config.ConfigMapping;
import io.smallrye.config.WithDefault;
import java.time.Duration;

/** Keys under {@code roundsman.claims}. */
@ConfigMapping(prefix = "roundsman.claims")
public interface ClaimsConfig {

    /** Whether serial numbers that devices say are followed: which unit stands where. */
    @WithDefault("true")
    boolean follow();

    /** How often that is looked at. */
    @WithDefault("10s")
    Duration every();
}
