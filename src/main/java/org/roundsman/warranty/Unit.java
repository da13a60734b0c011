package org.roundsman.warranty;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Optional;
import java.util.OptionalLong;
import org.roundsman.fleet.DeviceKind;

/**
 * One piece of hardware, with what is known of it: a device of the fleet, or a purchase that stands at no device.
 *
 * @param kind empty where no device tells
 * @param siteId empty where it is at no site, such as a spare
 * @param zone of the site; UTC without one
 * @param name of the device, or empty
 * @param place of the device, or empty
 * @param serial empty where neither the device nor a purchase tells
 * @param firstSeen the day, in that zone, on which the serial number was first read, here or elsewhere
 * @param purchase of this very unit
 * @param stranger a purchase that names this device but another serial number than it tells; it does not count
 * @param fate what became of it when it left for good; only of a purchase that stands at no device
 */
public record Unit(
        OptionalLong deviceId,
        Optional<DeviceKind> kind,
        long customerId,
        String customer,
        OptionalLong siteId,
        String site,
        ZoneId zone,
        String name,
        String place,
        String serial,
        Optional<UnitModel> model,
        Optional<LocalDate> firstSeen,
        Optional<Purchase> purchase,
        Optional<Purchase> stranger,
        Optional<UnitFate> fate) {

    /** Address part of its page: by device where there is one, else by purchase. */
    public String key() {
        return deviceId.isPresent()
                ? "devices/" + deviceId.getAsLong()
                : "purchases/" + purchase.map(Purchase::id).orElseThrow();
    }

    /** What people call it: the device's name, else the serial number. */
    public String title() {
        return name.isEmpty() ? serial : name;
    }

    public String modelLabel() {
        return model.map(UnitModel::label).orElse("");
    }
}
