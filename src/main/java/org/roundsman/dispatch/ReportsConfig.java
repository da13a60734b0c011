package org.roundsman.dispatch;

import io.smallrye.config.ConfigMapping;
import io.smallrye.config.WithDefault;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import java.time.Duration;
import java.util.Optional;

/** Keys under {@code roundsman.reports}. */
@ConfigMapping(prefix = "roundsman.reports")
public interface ReportsConfig {

    /** Whether reports are built, sent and tidied away by themselves. */
    @WithDefault("true")
    boolean enabled();

    /** For so many days after a report was sent, later data makes a further revision of it. */
    @WithDefault("60")
    @Min(0)
    @Max(400)
    int lateDays();

    /** Address under which others reach the pages, for links to reports; none means the address of whoever makes the link. */
    Optional<String> linkAddress();

    /** Pause after a first failed attempt to send a mail; doubles with each. */
    @WithDefault("1m")
    Duration firstRetry();

    /** The longest pause between two attempts. */
    @WithDefault("1h")
    Duration longestRetry();

    /** After this time without success a mail is given up and shown. */
    @WithDefault("48h")
    Duration giveUpAfter();
}
