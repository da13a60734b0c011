package org.roundsman.mail;

import jakarta.mail.BodyPart;
import jakarta.mail.MessagingException;
import jakarta.mail.internet.ContentType;
import jakarta.mail.internet.InternetHeaders;
import jakarta.mail.internet.MimeMessage;
import jakarta.mail.internet.MimeMultipart;
import jakarta.mail.internet.MimePartDataSource;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads delivery status notifications (RFC 3464), which come as {@code multipart/report} (RFC 6522). Pure. */
final class StatusReport {

    /** A Message-ID of ours: RFC 5322, section 3.6.4. */
    private static final Pattern ID = Pattern.compile("<([^@<>\\s]+)@[^<>\\s]+>");

    private static final int LONGEST_WHY = 500;

    private StatusReport() {}

    /** What it says of each recipient; nothing where it is no such notification, or does not say of which mail it is. */
    static List<Bounce> read(MimeMessage message) throws MessagingException, IOException {
        ContentType type = new ContentType(message.getContentType());
        String kind = type.getParameter("report-type");
        if (!type.match("multipart/report") || !"delivery-status".equalsIgnoreCase(kind)) {
            return List.of();
        }
        MimeMultipart parts = new MimeMultipart(new MimePartDataSource(message));
        List<InternetHeaders> groups = List.of();
        Optional<String> key = Optional.empty();
        for (int i = 0; i < parts.getCount(); i++) {
            BodyPart part = parts.getBodyPart(i);
            ContentType of = new ContentType(part.getContentType());
            if (of.match("message/delivery-status")) {
                groups = groups(part.getInputStream().readAllBytes());
            } else if (of.match("message/rfc822") || of.match("text/rfc822-headers")) {
                key = key(new InternetHeaders(part.getInputStream()));
            }
        }
        return key.isEmpty() ? List.of() : bounces(key.get(), groups);
    }

    /** Fields of the message, then those of each recipient; blank lines part them (RFC 3464, section 2.1). */
    private static List<InternetHeaders> groups(byte[] octets) throws MessagingException {
        List<InternetHeaders> groups = new ArrayList<>();
        for (String text : new String(octets, StandardCharsets.UTF_8).strip().split("\\r?\\n(?:[ \\t]*\\r?\\n)+")) {
            byte[] group = (text + "\r\n\r\n").getBytes(StandardCharsets.UTF_8);
            groups.add(new InternetHeaders(new ByteArrayInputStream(group)));
        }
        return groups;
    }

    private static Optional<String> key(InternetHeaders returned) {
        String id = returned.getHeader("Message-ID", null);
        Matcher ours = ID.matcher(id == null ? "" : id);
        return ours.find() ? Optional.of(ours.group(1)) : Optional.empty();
    }

    private static List<Bounce> bounces(String key, List<InternetHeaders> groups) {
        List<Bounce> bounces = new ArrayList<>();
        for (InternetHeaders group : groups) {
            action(field(group, "Action"))
                    .ifPresent(action ->
                            bounces.add(new Bounce(key, value(field(group, "Final-Recipient")), action, why(group))));
        }
        return bounces;
    }

    private static Optional<Bounce.Action> action(String word) {
        return switch (word.toLowerCase(Locale.ROOT)) {
            case "failed" -> Optional.of(Bounce.Action.FAILED);
            case "delayed" -> Optional.of(Bounce.Action.DELAYED);
            default -> Optional.empty();
        };
    }

    private static String why(InternetHeaders group) {
        String said = value(field(group, "Diagnostic-Code"));
        String why = said.isEmpty() ? field(group, "Status") : said;
        return why.length() > LONGEST_WHY ? why.substring(0, LONGEST_WHY) : why;
    }

    /** Without folds, and without what may not be stored. */
    private static String field(InternetHeaders group, String name) {
        String text = group.getHeader(name, null);
        return text == null ? "" : text.replaceAll("[\\s\\p{Cntrl}]+", " ").strip();
    }

    /** What follows the type, as in {@code smtp; 550 5.1.1 unknown}. */
    private static String value(String typed) {
        return typed.substring(typed.indexOf(';') + 1).strip();
    }
}
