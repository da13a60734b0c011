package org.roundsman.mail;

import java.util.List;
import java.util.Optional;

/**
 * One mail.
 *
 * @param to address of the one recipient
 * @param key makes the Message-ID: the same at each attempt, so that a repeat can be told
 * @param inReplyTo key of an earlier mail that this one follows (RFC 5322, section 3.6.4)
 * @param list short name of the stream of mails it belongs to, in letters, digits and hyphens (RFC 2919)
 */
public record Letter(
        String to,
        String subject,
        String text,
        String html,
        String key,
        Optional<String> inReplyTo,
        String list,
        List<Attachment> attachments) {

    public Letter {
        attachments = List.copyOf(attachments);
    }

    /** Without attachments. */
    public Letter(
            String to, String subject, String text, String html, String key, Optional<String> inReplyTo, String list) {
        this(to, subject, text, html, key, inReplyTo, list, List.of());
    }

    /**
     * A file that goes with it.
     *
     * @param name in ASCII
     * @param mediaType such as {@code application/pdf}
     */
    public record Attachment(String name, String mediaType, byte[] octets) {}
}
