package org.roundsman.warranty;

import io.smallrye.config.ConfigMapping;
import io.smallrye.config.WithDefault;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;

/** Keys under {@code roundsman.warranty}. */
@ConfigMapping(prefix = "roundsman.warranty")
public interface WarrantyConfig {

    /** Whether warranties that end soon raise alarms. */
    @WithDefault("true")
    boolean alarms();

    /** Megabytes of evidence that one customer's purchases may hold together. */
    @WithDefault("200")
    @Min(1)
    @Max(100_000)
    int evidencePerCustomer();

    /** Calendar addresses that one person may hold at a time. */
    @WithDefault("10")
    @Min(1)
    @Max(100)
    int calendarsPerPerson();

    /** How often one calendar address may be asked within a minute. */
    @WithDefault("6")
    @Min(1)
    @Max(1_000)
    int calendarReads();

    /** How often one network address may ask for calendars within a minute, right addresses or wrong ones. */
    @WithDefault("60")
    @Min(1)
    @Max(100_000)
    int calendarAsks();
}
