package org.roundsman.discovery;

import io.smallrye.config.ConfigMapping;
import io.smallrye.config.WithDefault;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import java.time.Duration;
import org.roundsman.snmp.SnmpSettings;

/** Keys under {@code roundsman.discovery}. */
@ConfigMapping(prefix = "roundsman.discovery")
public interface DiscoveryConfig {

    /** Requests a second of one sweep, retries included. */
    @WithDefault("100")
    @Min(1)
    @Max(2000)
    int requestsPerSecond();

    /** Addresses of one sweep that are being asked at the same time. */
    @WithDefault("128")
    @Min(1)
    @Max(1000)
    int inFlight();

    /** Sweeps at the same time, each of another site; more wait for their turn. */
    @WithDefault("4")
    @Min(1)
    @Max(32)
    int atOnce();

    /** How long to wait for one reply. */
    @WithDefault("1s")
    Duration timeout();

    /** Further tries of one request. */
    @WithDefault("1")
    @Min(0)
    @Max(5)
    int retries();

    /** Sweeps have sockets of their own, so that rounds never wait for them. */
    default SnmpSettings snmp() {
        return new SnmpSettings(timeout(), retries(), Duration.ofHours(1), 2_000, 1);
    }
}
