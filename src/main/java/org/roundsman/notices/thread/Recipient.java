package org.roundsman.notices.thread;

import java.time.Instant;
import java.util.List;
import java.util.OptionalLong;
import org.roundsman.alarms.Severity;
import org.roundsman.notices.NoticeChoices;
import org.roundsman.notices.NoticeEvent;

/**
 * Somebody who may be told something.
 *
 * @param changedAt when what they chose was last changed: what was told to others before is not told to them
 * @param digestUntil end of what digests have told them
 * @param channels ways that are open now
 */
public record Recipient(
        long accountId,
        NoticeChoices choices,
        OwnHours hours,
        Instant changedAt,
        Instant digestUntil,
        List<String> channels) {

    public Recipient {
        channels = List.copyOf(channels);
    }

    public boolean wants(NoticeEvent event) {
        return choices.events().contains(event);
    }

    /**
     * Whether they chose to hear of that customer.
     *
     * @param customer empty for Roundsman itself, which those hear of who hear of every customer
     */
    public boolean hearsOf(OptionalLong customer) {
        return choices.everyCustomer()
                || customer.isPresent() && choices.customers().contains(customer.getAsLong());
    }

    /** Whether they are to be told now that something is wrong. */
    public boolean wants(OptionalLong customer, Severity severity, Instant now) {
        return wants(NoticeEvent.RAISE)
                && hearsOf(customer)
                && severity.atLeast(choices.severity())
                && hours.contain(now);
    }
}
