package org.roundsman.notices;

import io.smallrye.config.ConfigMapping;
import io.smallrye.config.WithDefault;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import java.time.Duration;
import java.util.Optional;

/** Keys under {@code roundsman.notices}. */
@ConfigMapping(prefix = "roundsman.notices")
public interface NoticesConfig {

    /** Whether anything is told to anybody. */
    @WithDefault("true")
    boolean enabled();

    /** Address under which people reach the pages, for links in notices; none means notices without links. */
    Optional<String> baseUrl();

    /** How often changes of alarms are looked at, and the outbox is. */
    @WithDefault("5s")
    Duration every();

    /** An alarm that clears and comes back within this time is still the same one to people. */
    @WithDefault("10m")
    Duration calmTime();

    /** The longest wait for the cause to be worked out. */
    @WithDefault("2m")
    Duration settleWait();

    /** Messages to one person by one channel in any hour; the last one is a summary of what is over. */
    @WithDefault("12")
    @Min(2)
    @Max(1000)
    int mostPerHour();

    /** How long what is over that bound is collected before it is summed up. */
    @WithDefault("2m")
    Duration collect();

    /** Pause after a first failed attempt; doubles with each. */
    @WithDefault("30s")
    Duration firstRetry();

    /** The longest pause between two attempts. */
    @WithDefault("1h")
    Duration longestRetry();

    /** After this time without success a message is given up and shown. */
    @WithDefault("24h")
    Duration giveUpAfter();

    /** How long sent messages are kept. */
    @WithDefault("90d")
    Duration keep();

    /** Longest wait for a webhook's receiver, from the first packet to the end of its answer. */
    @WithDefault("10s")
    Duration webhookTimeout();

    /** Whether webhooks may lead to this machine itself and to link-local addresses. */
    @WithDefault("false")
    boolean webhookLocalAllowed();
}
