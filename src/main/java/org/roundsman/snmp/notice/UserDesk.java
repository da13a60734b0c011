package org.roundsman.snmp.notice;

import java.io.IOException;
import java.net.InetAddress;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.function.LongSupplier;
import org.roundsman.snmp.EngineIdentity;
import org.roundsman.snmp.NotificationRefusal;
import org.roundsman.snmp.NotificationSender;
import org.roundsman.snmp.NotificationSenders;
import org.roundsman.snmp.session.PasswordKeys;
import org.roundsman.snmp.session.UserMessage;
import org.snmp4j.PDU;
import org.snmp4j.ScopedPDU;
import org.snmp4j.smi.OID;

/**
 * Judges traps and informs of SNMPv3 with the user-based security model (RFC 3414). Of a trap the sending engine is
 * authoritative, of an inform our own. Reports go to addresses of known devices only, so that nobody can make us send to
 * others. One thread.
 */
final class UserDesk {

    /** usmStats of SNMP-USER-BASED-SM-MIB (RFC 3414): the counters that Reports carry. */
    private static final OID STATS = new OID("1.3.6.1.6.3.15.1.1");

    private static final int UNKNOWN_ENGINES = 4;

    private final EngineIdentity own;
    private final NotificationSenders senders;
    private final LongSupplier nanos;
    private final UserWriter writer;
    private final Keyring keyring;
    private final EngineClocks clocks = new EngineClocks();
    private final long[] stats = new long[7];

    UserDesk(EngineIdentity own, NotificationSenders senders, PasswordKeys keys, LongSupplier nanos) {
        this.own = own;
        this.senders = senders;
        this.nanos = nanos;
        this.writer = new UserWriter(own, nanos);
        this.keyring = new Keyring(keys);
    }

    /** @throws IOException when it cannot be read */
    Judgement judge(byte[] datagram, InetAddress from) throws IOException {
        List<NotificationSender> here = senders.at(from);
        if (here.isEmpty()) {
            return new Judgement.Refused(NotificationRefusal.UNKNOWN_SENDER);
        }
        UserMessage message = UserMessage.read(datagram);
        boolean ours = Arrays.equals(own.id(), message.engineId());
        boolean reportable = (message.flags() & UserMessage.REPORTABLE) != 0;
        if (message.encrypted() && !message.signed() || message.boots() < 0 || message.time() < 0) {
            return new Judgement.Refused(NotificationRefusal.NO_NOTIFICATION);
        }
        if (reportable && !ours) {
            return new Judgement.Asked(report(message, UNKNOWN_ENGINES, null));
        }
        int length = message.engineId().length;
        if (reportable != ours || length < 5 || length > 32) {
            return new Judgement.Refused(NotificationRefusal.NO_NOTIFICATION);
        }
        return judge(message, datagram, from, here);
    }

    private Judgement judge(UserMessage message, byte[] datagram, InetAddress from, List<NotificationSender> here)
            throws IOException {
        Keyring.Trial trial = keyring.trial(message, datagram, here);
        if (trial.verified().isEmpty()) {
            return refused(message, trial.reason(), null);
        }
        boolean inTime = !message.signed() || isInTime(message, from);
        if (!inTime) {
            return refused(
                    message,
                    NotificationRefusal.TIME_WINDOW,
                    trial.verified().get(0).seal());
        }
        List<Opened> opened = open(message, trial.verified());
        if (opened.isEmpty()) {
            return refused(message, NotificationRefusal.PRIVACY_FAILED, null);
        }
        String engine = isOurs(message) ? "" : HexFormat.of().formatHex(message.engineId());
        Optional<NotificationSender> sender = Attribution.of(Keyring.fits(opened), engine);
        if (sender.isEmpty()) {
            return new Judgement.Refused(NotificationRefusal.DOUBTFUL);
        }
        Opened by = opened.stream()
                .filter(o -> o.key().sender() == sender.get())
                .findFirst()
                .orElseThrow();
        return heard(message, datagram, by);
    }

    private Judgement heard(UserMessage message, byte[] datagram, Opened opened) throws IOException {
        boolean inform = isOurs(message);
        boolean asExpected = opened.pdu().getType() == (inform ? PDU.INFORM : PDU.TRAP);
        Optional<TrapForm> form = asExpected ? TrapForm.of(opened.pdu()) : Optional.empty();
        if (form.isEmpty()) {
            return new Judgement.Refused(NotificationRefusal.NO_NOTIFICATION);
        }
        NotificationSender sender = opened.key().sender();
        // An inform that is sent again differs in its clock and signature, a trap is never sent again.
        return inform
                ? new Judgement.Heard(
                        sender,
                        form.get(),
                        writer.answer(message, opened.pdu(), opened.key().seal()),
                        opened.plain())
                : new Judgement.Heard(sender, form.get(), null, datagram);
    }

    private boolean isOurs(UserMessage message) {
        return Arrays.equals(own.id(), message.engineId());
    }

    private boolean isInTime(UserMessage message, InetAddress from) {
        if (!isOurs(message)) {
            String engine = HexFormat.of().formatHex(message.engineId());
            return clocks.isInTime(from, engine, message.boots(), message.time(), nanos.getAsLong());
        }
        return own.boots() < Integer.MAX_VALUE
                && message.boots() == own.boots()
                && Math.abs((long) message.time() - writer.time()) <= EngineClocks.WINDOW;
    }

    /** A message that a key opened. */
    record Opened(Keyring.Verified key, ScopedPDU pdu, byte[] plain) {}

    private static List<Opened> open(UserMessage message, List<Keyring.Verified> keys) {
        List<Opened> opened = new ArrayList<>();
        for (Keyring.Verified key : keys) {
            byte[] plain = message.encrypted()
                    ? key.seal().decrypt(message.data(), message.salt(), message.boots(), message.time())
                    : message.data();
            scoped(plain).ifPresent(pdu -> opened.add(new Opened(key, pdu, plain)));
        }
        return opened;
    }

    /** What a wrong key made of it is noise that cannot be read. */
    private static Optional<ScopedPDU> scoped(byte[] plain) {
        try {
            return Optional.of(UserMessage.scopedPdu(plain));
        } catch (IOException | RuntimeException e) {
            return Optional.empty();
        }
    }

    private Judgement refused(UserMessage message, NotificationRefusal reason, org.roundsman.snmp.session.Seal seal)
            throws IOException {
        boolean reportable = (message.flags() & UserMessage.REPORTABLE) != 0;
        int counter =
                switch (reason) {
                    case LEVEL_UNSUPPORTED -> 1;
                    case TIME_WINDOW -> 2;
                    case UNKNOWN_USER -> 3;
                    case WRONG_DIGEST -> 5;
                    default -> 6;
                };
        return new Judgement.Refused(reason, reportable ? report(message, counter, seal) : null);
    }

    private byte[] report(UserMessage message, int counter, org.roundsman.snmp.session.Seal seal) throws IOException {
        stats[counter]++;
        int requestId = message.encrypted()
                ? 0
                : scoped(message.data())
                        .map(pdu -> pdu.getRequestID().getValue())
                        .orElse(0);
        OID oid = new OID(STATS).append(counter).append(0);
        return writer.report(message, requestId, oid, stats[counter], seal);
    }
}
