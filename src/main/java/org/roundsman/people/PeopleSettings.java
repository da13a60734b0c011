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

    /** Days that a personal token is good for, where its person does not say otherwise. */
    @WithDefault("90")
    @Min(1)
    int tokenDays();

    /** Days that a personal token is good for at most. */
    @WithDefault("366")
    @Min(1)
    int tokenDaysMost();

    /** Wrong personal tokens from one address in a minute, after which further unknown ones from there must wait. */
    @WithDefault("20")
    @Min(1)
    int tokenFailures();

    /** Sign-in name of the account that the first start makes. */
    @WithDefault("owner")
    String firstOwner();
}
