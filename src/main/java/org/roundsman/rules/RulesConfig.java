package org.roundsman.rules;

import io.smallrye.config.ConfigMapping;
import io.smallrye.config.WithDefault;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;

/** Keys under {@code roundsman.rules}. */
@ConfigMapping(prefix = "roundsman.rules")
public interface RulesConfig {

    /** Whether readings are judged as they come, and alarms raised. */
    @WithDefault("true")
    boolean enabled();

    /** Readings that wait for the rules in memory at most; what does not fit is read from the database again. */
    @WithDefault("50000")
    @Min(100)
    int queueSize();

    /** The longest time, in days, over which other values can be tried. */
    @WithDefault("62")
    @Min(1)
    @Max(400)
    int tryDays();
}
