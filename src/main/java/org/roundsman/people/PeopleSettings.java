package org.roundsman.people;

import io.smallrye.config.ConfigMapping;
import io.smallrye.config.WithDefault;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import java.time.Duration;

/** Settings of accounts and sign-ins. */
@ConfigMapping(prefix = "roundsman.people")
public interface PeopleSettings {

    /** A sign-in ends after that long without a request. */
    @WithDefault("8h")
    Duration idle();

    /** A sign-in ends after that long in any case. */
    @WithDefault("7d")
    Duration longest();

    /** Wrong passwords in a row after which an account is locked. */
    @WithDefault("5")
    @Min(1)
    int failures();

    /** How long it stays locked. */
    @WithDefault("15m")
    Duration lockedFor();

    /** bcrypt cost: each step doubles the time of a check. */
    @WithDefault("12")
    @Min(10)
    @Max(16)
    int bcryptCost();

    /** How long the answer "who is this" may be remembered; a disabled account elsewhere in a cluster lasts that long. */
    @WithDefault("3s")
    Duration remembered();

    /** Sign-in name of the account that the first start makes. */
    @WithDefault("owner")
    String firstOwner();
}
