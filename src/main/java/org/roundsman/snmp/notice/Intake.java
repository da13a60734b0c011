package org.roundsman.snmp.notice;

import java.io.IOException;
import java.net.InetAddress;
import java.nio.ByteBuffer;
import java.util.List;
import java.util.Map;
import java.util.function.LongSupplier;
import org.roundsman.snmp.EngineIdentity;
import org.roundsman.snmp.Notification;
import org.roundsman.snmp.NotificationListener;
import org.roundsman.snmp.NotificationRefusal;
import org.roundsman.snmp.NotificationSenders;
import org.roundsman.snmp.RawAnswer;
import org.roundsman.snmp.SnmpAccess;
import org.roundsman.snmp.decode.RawAnswers;
import org.roundsman.snmp.session.PasswordKeys;
import org.snmp4j.asn1.BER;
import org.snmp4j.asn1.BERInputStream;

/**
 * Takes received messages in: who sent it, is it let in, did it come before; tells the listener, and says what to send
 * back. Knows no sockets. One thread, but for {@link #prepare}.
 */
public final class Intake {

    private static final long COMMUNITY_KEPT_NANOS = 60_000_000_000L;
    /** Longer than the time window of RFC 3414, so that no replay gets through. */
    private static final long USER_KEPT_NANOS = (2L * EngineClocks.WINDOW + 10) * 1_000_000_000L;

    private final NotificationListener listener;
    private final LongSupplier nanos;
    private final PasswordKeys keys = new PasswordKeys();
    private final CommunityDesk communities;
    private final UserDesk users;
    private final Repeats ofCommunities = new Repeats(COMMUNITY_KEPT_NANOS);
    private final Repeats ofUsers = new Repeats(USER_KEPT_NANOS);
    private final RawAnswers shown = new RawAnswers(List.of(), Map.of());

    public Intake(EngineIdentity own, NotificationSenders senders, NotificationListener listener, LongSupplier nanos) {
        this.listener = listener;
        this.nanos = nanos;
        this.communities = new CommunityDesk(senders);
        this.users = new UserDesk(own, senders, keys, nanos);
    }

    /** Does the slow step from password to key beforehand, on the caller's thread. */
    public void prepare(SnmpAccess access) {
        if (access instanceof SnmpAccess.User user && user.level() != SnmpAccess.Level.NO_AUTH) {
            prepare(user, user.authPassword());
            if (user.level() == SnmpAccess.Level.AUTH_PRIV) {
                prepare(user, user.privPassword());
            }
        }
    }

    private void prepare(SnmpAccess.User user, String password) {
        if (password != null && !password.isEmpty()) {
            keys.key(user.auth(), password);
        }
    }

    /** Takes a message in; what to send back to where it came from, or null. */
    public byte[] take(byte[] datagram, InetAddress from) {
        int version = version(datagram);
        try {
            return follow(judge(datagram, from, version), version, from);
        } catch (IOException | RuntimeException e) {
            listener.refused(from, shown(version), NotificationRefusal.NO_NOTIFICATION);
            return null;
        }
    }

    private Judgement judge(byte[] datagram, InetAddress from, int version) throws IOException {
        return switch (version) {
            case 0, 1 -> communities.judge(datagram, from, version);
            case 3 -> users.judge(datagram, from);
            default -> new Judgement.Refused(NotificationRefusal.NO_NOTIFICATION);
        };
    }

    private byte[] follow(Judgement judgement, int version, InetAddress from) {
        if (judgement instanceof Judgement.Heard heard) {
            return heard(heard, version, from);
        }
        if (judgement instanceof Judgement.Refused refused) {
            listener.refused(from, shown(version), refused.reason());
            return reported(refused.report());
        }
        return reported(((Judgement.Asked) judgement).report());
    }

    private byte[] reported(byte[] report) {
        if (report != null) {
            listener.reported();
        }
        return report;
    }

    private byte[] heard(Judgement.Heard heard, int version, InetAddress from) {
        Repeats repeats = version == 3 ? ofUsers : ofCommunities;
        Repeats.Key key = repeats.key(heard.sender().id(), heard.content());
        if (repeats.isRepeated(key, nanos.getAsLong())) {
            listener.repeated();
        } else if (listener.take(notification(heard, version, from))) {
            repeats.take(key, nanos.getAsLong());
        } else {
            return null;
        }
        if (heard.answer() != null) {
            listener.answered();
        }
        return heard.answer();
    }

    private Notification notification(Judgement.Heard heard, int version, InetAddress from) {
        List<RawAnswer> variables =
                heard.form().variables().stream().map(shown::of).toList();
        return new Notification(
                heard.sender().id(),
                shown(version),
                heard.answer() != null,
                heard.form().oid().toDottedString(),
                from,
                variables);
    }

    /** The version on the wire; -1 for what is no SNMP message. */
    private static int version(byte[] datagram) {
        try {
            BERInputStream in = new BERInputStream(ByteBuffer.wrap(datagram));
            BER.MutableByte tag = new BER.MutableByte();
            BER.decodeHeader(in, tag);
            return BER.decodeInteger(in, tag);
        } catch (IOException | RuntimeException e) {
            return -1;
        }
    }

    /** The version as people count. */
    private static int shown(int version) {
        return switch (version) {
            case 0 -> 1;
            case 1 -> 2;
            case 3 -> 3;
            default -> 0;
        };
    }
}
