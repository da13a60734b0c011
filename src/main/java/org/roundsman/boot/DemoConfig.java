package org.roundsman.boot;

import io.smallrye.config.ConfigMapping;
import io.smallrye.config.WithDefault;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import java.util.OptionalInt;
import java.util.OptionalLong;
import org.roundsman.demo.DemoFleet;

/** Keys under {@code roundsman.demo}: the invented fleet. */
@ConfigMapping(prefix = "roundsman.demo")
public interface DemoConfig {

    /** Whether the invented fleet is sown and answers; the role demo sets it. */
    @WithDefault("false")
    boolean enabled();

    /** Access points of the invented fleet, 250 to 20000; where it is not set, as many as the data holds, or 260. */
    OptionalInt accessPoints();

    /** Which fleet: another number makes another one; where it is not set, the one that the data holds. */
    OptionalLong seed();

    /** UDP port of the agents; each has its own loopback address. */
    @WithDefault("" + DemoFleet.USUAL_PORT)
    @Min(1)
    @Max(65535)
    int port();

    /** Whether 13 weeks of history are written before the first start. */
    @WithDefault("true")
    boolean history();
}
