package org.roundsman.firmware;

import io.smallrye.config.ConfigMapping;
import io.smallrye.config.WithDefault;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;

/** Keys under {@code roundsman.firmware}. */
@ConfigMapping(prefix = "roundsman.firmware")
public interface FirmwareConfig {

    /** Whether withdrawn firmware raises alarms, and changes of firmware are noticed and looked back upon. */
    @WithDefault("true")
    boolean enabled();

    /** Minutes that the work list reckons for changing the firmware of one device. */
    @WithDefault("15")
    @Min(1)
    @Max(240)
    int minutesPerDevice();
}
