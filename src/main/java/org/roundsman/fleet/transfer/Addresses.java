package org.roundsman.fleet.transfer;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.roundsman.fleet.DeviceDraft;

/** No two devices of a site are polled at one address and port, as the fleet will be after the upload. */
final class Addresses {

    private final Map<Picture.Address, Entry<DeviceDraft>> taken = new HashMap<>();
    private final List<Entry<DeviceDraft>> wanted;

    Addresses(List<Entry<DeviceDraft>> stored, List<Entry<DeviceDraft>> wanted) {
        this.wanted = wanted;
        stored.stream().filter(device -> device.line() == null).forEach(device -> taken.put(address(device), device));
    }

    /** Refuses each row whose address another device keeps or an earlier row takes. */
    void check() {
        for (Entry<DeviceDraft> device : wanted) {
            Entry<DeviceDraft> other = taken.putIfAbsent(address(device), device);
            if (other != null) {
                device.line().fault("host", taken(other));
            }
        }
    }

    private static String taken(Entry<DeviceDraft> other) {
        return other.line() == null
                ? "device " + other.stored().name() + " of this site has this address and port already"
                : other.line().place() + " has this address and port already";
    }

    private static Picture.Address address(Entry<DeviceDraft> device) {
        return new Picture.Address(
                device.owner(), device.last().host(), device.last().port());
    }
}
