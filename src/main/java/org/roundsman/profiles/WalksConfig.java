package org.roundsman.profiles;

import io.smallrye.config.ConfigMapping;
import io.smallrye.config.WithDefault;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import java.time.Duration;
import org.roundsman.snmp.WalkBounds;

/** Keys under {@code roundsman.walks}. */
@ConfigMapping(prefix = "roundsman.walks")
public interface WalksConfig {

    /** Variables of one device after which reading everything stops. */
    @WithDefault("100000")
    @Min(1)
    @Max(500_000)
    int mostVariables();

    /** Pause between a device's reply and the next request, so that reading everything is no burden. */
    @WithDefault("20ms")
    Duration pause();

    /** Devices of which everything is read at a time. */
    @WithDefault("4")
    @Min(1)
    int atATime();

    default WalkBounds bounds() {
        return new WalkBounds(mostVariables(), pause());
    }
}
