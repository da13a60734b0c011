package org.roundsman.warranty;

import java.time.ZoneId;
import java.util.OptionalLong;
import org.roundsman.fleet.PurchaseDraft;

/**
 * What was bought, as it is kept.
 *
 * @param site name of the site it is at, or empty
 * @param device name of the device it is polled as, or empty
 * @param zone of that site; UTC without one
 * @param modelId what it is, where somebody entered it
 * @param facts what is entered; unknown days and prices are null there
 */
public record Purchase(
        long id,
        long customerId,
        String customer,
        String site,
        String device,
        ZoneId zone,
        OptionalLong modelId,
        PurchaseDraft facts) {

    public String serial() {
        return facts.serial();
    }

    public OptionalLong siteId() {
        return facts.siteId() == null ? OptionalLong.empty() : OptionalLong.of(facts.siteId());
    }

    public OptionalLong deviceId() {
        return facts.deviceId() == null ? OptionalLong.empty() : OptionalLong.of(facts.deviceId());
    }
}
