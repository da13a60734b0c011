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

    /** Where notifications of the invented agents go: an IPv4 address and a port, or {@code off}. */
    @WithDefault("127.0.0.1:10162")
    String notifications();

    /**
     * Whether the agents of one more invented customer answer, who is not entered in the service, so that onboarding can
     * be tried.
     */
    @WithDefault("true")
    boolean prospect();

    /** Whether each kind of fault comes once an hour by itself, at minutes that the page of faults shows. */
    @WithDefault("true")
    boolean programme();

    /** Whether 13 weeks of history are written before the first start. */
    @WithDefault("true")
    boolean history();
}
