package org.roundsman.timeline;

import io.smallrye.config.ConfigMapping;
import io.smallrye.config.WithDefault;
import jakarta.validation.constraints.Min;

/** Keys under {@code roundsman.timeline}. */
@ConfigMapping(prefix = "roundsman.timeline")
public interface TimelineConfig {

    /** Days for which events of devices are kept. */
    @WithDefault("400")
    @Min(1)
    int keepDays();
}
