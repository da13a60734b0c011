package org.roundsman.boot;

import io.smallrye.config.ConfigMapping;
import io.smallrye.config.WithDefault;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import org.roundsman.demo.DemoFleet;

/** Keys under {@code roundsman.demo}: the invented fleet. */
@ConfigMapping(prefix = "roundsman.demo")
public interface DemoConfig {

    /** Whether the invented fleet is sown and answers; the role demo sets it. */
    @WithDefault("false")
    boolean enabled();

    /** Access points of the invented fleet. */
    @WithDefault("" + DemoFleet.USUAL_SIZE)
    @Min(DemoFleet.SMALLEST)
    @Max(DemoFleet.LARGEST)
    int accessPoints();

    /** Which fleet: another number makes another one. */
    @WithDefault("" + DemoFleet.USUAL_SEED)
    long seed();

    /** UDP port of the agents; each has its own loopback address. */
    @WithDefault("" + DemoFleet.USUAL_PORT)
    @Min(1)
    @Max(65535)
    int port();

    /** Whether 13 weeks of history are written before the first start. */
    @WithDefault("true")
    boolean history();
}
