package org.roundsman.polling;

import io.smallrye.config.ConfigMapping;
import io.smallrye.config.WithDefault;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.roundsman.snmp.SnmpSettings;

/** Keys under {@code roundsman.polling}. */
@ConfigMapping(prefix = "roundsman.polling")
public interface PollingConfig {

    /** Whether rounds are made at all. */
    @WithDefault("true")
    boolean enabled();

    /** Rounds at one site at a time; a round has one request in flight. */
    @WithDefault("8")
    @Min(1)
    int inFlightPerSite();

    /** Rounds in all at a time. */
    @WithDefault("1000")
    @Min(1)
    int inFlight();

    /** The longest time between two rounds of a silent device. */
    @WithDefault("5m")
    Duration longestBackOff();

    /** How long to wait for one reply. */
    @WithDefault("2s")
    Duration timeout();

    /** Further tries of one request. */
    @WithDefault("1")
    @Min(0)
    @Max(5)
    int retries();

    /** How often facts that seldom change are read. */
    @WithDefault("1h")
    Duration factsEvery();

    /** Rows of one table after which reading it stops. */
    @WithDefault("20000")
    @Min(1)
    int maxRows();

    /** UDP sockets, each with its own receiving thread. */
    @WithDefault("2")
    @Min(1)
    @Max(64)
    int sockets();

    /** Folders with profiles of your own; they win over shipped ones of the same name. */
    Optional<List<Path>> profiles();

    default SnmpSettings snmp() {
        return new SnmpSettings(timeout(), retries(), factsEvery(), maxRows(), sockets());
    }

    default RoundsSettings rounds() {
        return new RoundsSettings(inFlightPerSite(), inFlight(), longestBackOff());
    }
}
