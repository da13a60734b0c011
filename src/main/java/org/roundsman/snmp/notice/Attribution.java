package org.roundsman.snmp.notice;

import java.util.Collection;
import java.util.List;
import java.util.Optional;
import org.roundsman.snmp.NotificationSender;

/** Decides which device sent a notification, when its secret fits one or several at an address. */
final class Attribution {

    private Attribution() {}

    /** A device whose secret fits; own is the one by which it is read. */
    record Fit(NotificationSender sender, boolean own) {}

    /**
     * The sender, where it is certain: the one that fits; else the one whose engine ID it is; else, among devices of one
     * group, the one that is read by that very secret. Devices of several groups that share a secret stay in doubt.
     *
     * @param engineId of the sender as hexadecimal digits, or empty
     */
    static Optional<NotificationSender> of(Collection<Fit> fits, String engineId) {
        if (fits.size() <= 1) {
            return fits.stream().map(Fit::sender).findFirst();
        }
        List<Fit> byEngine = fits.stream()
                .filter(fit ->
                        !engineId.isEmpty() && engineId.equals(fit.sender().engineId()))
                .toList();
        if (!byEngine.isEmpty()) {
            return only(byEngine);
        }
        boolean oneGroup =
                fits.stream().map(fit -> fit.sender().group()).distinct().count() == 1;
        return oneGroup ? only(fits.stream().filter(Fit::own).toList()) : Optional.empty();
    }

    private static Optional<NotificationSender> only(List<Fit> fits) {
        return fits.size() == 1 ? Optional.of(fits.get(0).sender()) : Optional.empty();
    }
}
