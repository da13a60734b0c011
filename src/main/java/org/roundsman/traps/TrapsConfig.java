package org.roundsman.traps;

import io.smallrye.config.ConfigMapping;
import io.smallrye.config.WithDefault;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import java.time.Duration;
import org.roundsman.snmp.NotificationLimits;

/** Keys under {@code roundsman.traps}. */
@ConfigMapping(prefix = "roundsman.traps")
public interface TrapsConfig {

    /** Whether notifications are received at all. */
    @WithDefault("true")
    boolean enabled();

    /** Local address at which they come in. */
    @WithDefault("0.0.0.0")
    String address();

    /** UDP port at which they come in; 0 takes a free one. */
    @WithDefault("10162")
    @Min(0)
    @Max(65535)
    int port();

    /** The shortest time between two rounds of a device that its notifications cause. */
    @WithDefault("10s")
    Duration roundEvery();

    /** Notifications of one device that are kept one by one, at once. */
    @WithDefault("30")
    @Min(1)
    int deviceBurst();

    /** After those, one more is kept in that time. */
    @WithDefault("10s")
    Duration deviceOnePer();

    /** After how long those of a device that were not kept one by one become one event. */
    @WithDefault("10m")
    Duration sumEvery();

    /** Messages of one address that are looked at, at once. */
    @WithDefault("500")
    @Min(1)
    int sourceBurst();

    /** Messages of one address that are looked at, a second. */
    @WithDefault("200")
    @Min(1)
    int sourcePerSecond();

    default NotificationLimits limits() {
        return new NotificationLimits(sourceBurst(), sourcePerSecond());
    }
}
