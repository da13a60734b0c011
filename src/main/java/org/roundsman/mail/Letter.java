package org.roundsman.mail;

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
        String to, String subject, String text, String html, String key, Optional<String> inReplyTo, String list) {}
