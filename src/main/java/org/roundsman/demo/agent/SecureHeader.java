package org.roundsman.demo.agent;

import org.roundsman.demo.agent.BerReader.Malformed;

/**
 * Everything of a v3 message before its data.
 *
 * @param messageEnd octets of the whole message
 * @param digestAt where the digest stands in the message
 */
record SecureHeader(
        int messageEnd,
        int messageId,
        int maxSize,
        int flags,
        int securityModel,
        byte[] engineId,
        int boots,
        int time,
        byte[] userName,
        byte[] digest,
        int digestAt,
        byte[] salt) {

    /** Reads on from behind the version, up to the data. */
    static SecureHeader read(BerReader in) throws Malformed {
        in.head(Tags.SEQUENCE);
        int messageId = in.integer();
        int maxSize = in.integer();
        byte[] flags = in.string();
        if (flags.length != 1) {
            throw new Malformed("flags of " + flags.length + " octets");
        }
        int securityModel = in.integer();
        int parametersEnd = in.head(Tags.OCTET_STRING);
        in.head(Tags.SEQUENCE);
        byte[] engineId = in.string();
        int boots = in.integer();
        int time = in.integer();
        byte[] userName = in.string();
        byte[] digest = in.string();
        int digestAt = in.position() - digest.length;
        byte[] salt = in.string();
        in.skipTo(parametersEnd);
        return new SecureHeader(
                in.limit(),
                messageId,
                maxSize,
                flags[0],
                securityModel,
                engineId,
                boots,
                time,
                userName,
                digest,
                digestAt,
                salt);
    }
}
