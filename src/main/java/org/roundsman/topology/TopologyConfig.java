package org.roundsman.topology;

import io.smallrye.config.ConfigMapping;
import io.smallrye.config.WithDefault;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import java.time.Duration;

/** Keys under {@code roundsman.topology}. */
@ConfigMapping(prefix = "roundsman.topology")
public interface TopologyConfig {

    /** Whether wiring is read at all. */
    @WithDefault("true")
    boolean enabled();

    /** How often all of a device's wiring is read. */
    @WithDefault("15m")
    Duration every();

    /** How often states of ports and of power are read in between. */
    @WithDefault("3m")
    Duration statesEvery();

    /** How often an access point that did not offer LLDP is asked again whether it does. */
    @WithDefault("24h")
    Duration withoutLldpEvery();

    /** Devices read at a time, in all; never more than one of a site. */
    @WithDefault("16")
    @Min(1)
    @Max(1000)
    int atOnce();

    /** Complete readings without it after which evidence is called old. */
    @WithDefault("3")
    @Min(1)
    @Max(1000)
    int oldAfter();

    /** A port that learnt more addresses than that does not tell where a device hangs. */
    @WithDefault("64")
    @Min(1)
    int edgePortAddresses();

    /** Old evidence on which no place rests is deleted after that long. */
    @WithDefault("30d")
    Duration forgetAfter();

    /** Rows of one table after which reading it stops. */
    @WithDefault("20000")
    @Min(100)
    int maxRows();
}
