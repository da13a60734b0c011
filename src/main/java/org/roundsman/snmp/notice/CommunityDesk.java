package org.roundsman.snmp.notice;

import java.io.IOException;
import java.net.InetAddress;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.roundsman.snmp.NotificationRefusal;
import org.roundsman.snmp.NotificationSender;
import org.roundsman.snmp.NotificationSenders;
import org.roundsman.snmp.SnmpAccess;
import org.roundsman.snmp.session.Octets;
import org.snmp4j.PDU;
import org.snmp4j.PDUv1;
import org.snmp4j.asn1.BER;
import org.snmp4j.asn1.BERInputStream;

/**
 * Judges traps of SNMPv1 (RFC 1157) and traps and informs of v2c (RFC 1901, RFC 3416). A community of either version
 * lets both in. One thread.
 */
final class CommunityDesk {

    private final NotificationSenders senders;
    private final Octets octets = new Octets();

    CommunityDesk(NotificationSenders senders) {
        this.senders = senders;
    }

    /**
     * @param version as on the wire: 0 or 1
     * @throws IOException when it cannot be read
     */
    Judgement judge(byte[] datagram, InetAddress from, int version) throws IOException {
        BERInputStream in = new BERInputStream(ByteBuffer.wrap(datagram));
        BER.MutableByte tag = new BER.MutableByte();
        BER.decodeHeader(in, tag);
        BER.decodeInteger(in, tag);
        byte[] community = BER.decodeString(in, tag);
        PDU pdu = version == 0 ? new PDUv1() : new PDU();
        pdu.decodeBER(in);
        Optional<TrapForm> form = form(pdu);
        if (form.isEmpty()) {
            return new Judgement.Refused(NotificationRefusal.NO_NOTIFICATION);
        }
        List<NotificationSender> here = at(from, form.get().origin());
        if (here.isEmpty()) {
            return new Judgement.Refused(NotificationRefusal.UNKNOWN_SENDER);
        }
        List<Attribution.Fit> fits = fits(here, community);
        if (fits.isEmpty()) {
            return new Judgement.Refused(NotificationRefusal.WRONG_COMMUNITY);
        }
        Optional<NotificationSender> sender = Attribution.of(fits, "");
        if (sender.isEmpty()) {
            return new Judgement.Refused(NotificationRefusal.DOUBTFUL);
        }
        byte[] answer = pdu.getType() == PDU.INFORM ? answer(pdu, community) : null;
        return new Judgement.Heard(sender.get(), form.get(), answer, datagram);
    }

    private static Optional<TrapForm> form(PDU pdu) {
        if (pdu instanceof PDUv1 trap) {
            return pdu.getType() == PDU.V1TRAP ? TrapForm.of(trap) : Optional.empty();
        }
        return pdu.getType() == PDU.TRAP || pdu.getType() == PDU.INFORM ? TrapForm.of(pdu) : Optional.empty();
    }

    /** Where no device has the address, somebody may have passed it on: then the one counts that it names. */
    private List<NotificationSender> at(InetAddress from, InetAddress origin) {
        List<NotificationSender> here = senders.at(from);
        return here.isEmpty() && origin != null ? senders.at(origin) : here;
    }

    private static List<Attribution.Fit> fits(List<NotificationSender> here, byte[] community) {
        List<Attribution.Fit> fits = new ArrayList<>();
        for (NotificationSender sender : here) {
            boolean own = fits(sender.own(), community);
            if (own || sender.others().stream().anyMatch(access -> fits(access, community))) {
                fits.add(new Attribution.Fit(sender, own));
            }
        }
        return fits;
    }

    private static boolean fits(SnmpAccess access, byte[] community) {
        return access instanceof SnmpAccess.Community known
                && MessageDigest.isEqual(known.community().getBytes(StandardCharsets.UTF_8), community);
    }

    private byte[] answer(PDU inform, byte[] community) throws IOException {
        PDU response = UserWriter.response(inform, new PDU());
        octets.clear();
        return octets.prepend(UserWriter.encoded(response))
                .string(community)
                .integer(1)
                .wrap(0x30, 0)
                .toArray();
    }
}
