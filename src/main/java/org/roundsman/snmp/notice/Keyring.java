package org.roundsman.snmp.notice;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.roundsman.snmp.NotificationRefusal;
import org.roundsman.snmp.NotificationSender;
import org.roundsman.snmp.SnmpAccess;
import org.roundsman.snmp.SnmpAccess.Level;
import org.roundsman.snmp.session.PasswordKeys;
import org.roundsman.snmp.session.Seal;
import org.roundsman.snmp.session.UserMessage;

/** Finds whose keys a message of SNMPv3 was signed with, and keeps keys bound to engines. One thread. */
final class Keyring {

    private static final int KEPT = 4_096;
    /** Different secrets that are tried for one message; more devices than that do not share an address. */
    private static final int MOST_TRIALS = 32;

    private final PasswordKeys keys;
    private final Map<Bound, Seal> seals = new LinkedHashMap<>(64, 0.75f, true) {
        private static final long serialVersionUID = 1;

        @Override
        protected boolean removeEldestEntry(Map.Entry<Bound, Seal> eldest) {
            return size() > KEPT;
        }
    };

    private record Bound(SnmpAccess.User user, String engineId) {}

    /** A device whose key signed the message, and that key; own is the access by which it is read. */
    record Verified(NotificationSender sender, boolean own, Seal seal) {}

    /** @param reason why none did; for an empty list only */
    record Trial(List<Verified> verified, NotificationRefusal reason) {}

    Keyring(PasswordKeys keys) {
        this.keys = keys;
    }

    /** Tries the users of the devices at an address. */
    Trial trial(UserMessage message, byte[] datagram, List<NotificationSender> here) {
        NotificationRefusal reason = NotificationRefusal.UNKNOWN_USER;
        Map<SnmpAccess.User, Optional<Seal>> tried = new HashMap<>();
        List<Verified> verified = new ArrayList<>();
        for (NotificationSender sender : here) {
            for (SnmpAccess.User user : users(sender, message.user())) {
                if (!admits(user, message)) {
                    reason = worse(reason, NotificationRefusal.LEVEL_UNSUPPORTED);
                    continue;
                }
                if (tried.size() >= MOST_TRIALS && !tried.containsKey(user)) {
                    continue;
                }
                Optional<Seal> seal = tried.computeIfAbsent(user, u -> verify(u, message, datagram));
                if (seal.isEmpty()) {
                    reason = NotificationRefusal.WRONG_DIGEST;
                } else {
                    verified.add(new Verified(sender, user.equals(sender.own()), seal.get()));
                }
            }
        }
        return new Trial(verified, reason);
    }

    private static NotificationRefusal worse(NotificationRefusal one, NotificationRefusal other) {
        return one.ordinal() > other.ordinal() ? one : other;
    }

    private static List<SnmpAccess.User> users(NotificationSender sender, byte[] name) {
        return Stream.concat(Stream.of(sender.own()), sender.others().stream())
                .filter(SnmpAccess.User.class::isInstance)
                .map(SnmpAccess.User.class::cast)
                .filter(user -> Arrays.equals(user.name().getBytes(StandardCharsets.UTF_8), name))
                .distinct()
                .toList();
    }

    /** Signed where the access says so; encryption beyond that is the sender's matter. */
    private static boolean admits(SnmpAccess.User user, UserMessage message) {
        if (user.level() == Level.NO_AUTH) {
            return !message.signed();
        }
        return message.signed() && (!message.encrypted() || user.level() == Level.AUTH_PRIV);
    }

    private Optional<Seal> verify(SnmpAccess.User user, UserMessage message, byte[] datagram) {
        if (user.level() != Level.NO_AUTH && isEmpty(user.authPassword())
                || user.level() == Level.AUTH_PRIV && isEmpty(user.privPassword())) {
            return Optional.empty();
        }
        Seal seal = seals.computeIfAbsent(
                new Bound(user, HexFormat.of().formatHex(message.engineId())),
                bound -> new Seal(user, message.engineId(), keys));
        boolean authentic = !message.signed()
                || seal.isAuthentic(datagram.clone(), message.signatureAt(), message.signatureLength());
        return authentic ? Optional.of(seal) : Optional.empty();
    }

    private static boolean isEmpty(String password) {
        return password == null || password.isEmpty();
    }

    /** By device, each once. */
    static List<Attribution.Fit> fits(List<UserDesk.Opened> opened) {
        Map<NotificationSender, Boolean> own = new LinkedHashMap<>();
        opened.forEach(o -> own.merge(o.key().sender(), o.key().own(), Boolean::logicalOr));
        return own.entrySet().stream()
                .map(fit -> new Attribution.Fit(fit.getKey(), fit.getValue()))
                .toList();
    }
}
