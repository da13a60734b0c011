package org.roundsman.mail;

import jakarta.activation.DataHandler;
import jakarta.mail.Message;
import jakarta.mail.MessagingException;
import jakarta.mail.Part;
import jakarta.mail.Session;
import jakarta.mail.internet.InternetAddress;
import jakarta.mail.internet.MimeBodyPart;
import jakarta.mail.internet.MimeMessage;
import jakarta.mail.internet.MimeMultipart;
import jakarta.mail.util.ByteArrayDataSource;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.util.Date;

/** A mail with our own Message-ID: plain text and HTML as alternatives (RFC 2046, section 5.1.4), and files. */
final class Envelope extends MimeMessage {

    private static final String UTF_8 = StandardCharsets.UTF_8.name();

    private final String id;

    private Envelope(Session session, String id) {
        super(session);
        this.id = id;
    }

    static Envelope of(Session session, Letter letter, InternetAddress from, Clock clock) throws MessagingException {
        String domain = MailAddress.domain(from.getAddress());
        Envelope mail = new Envelope(session, id(letter.key(), domain));
        mail.setFrom(from);
        mail.setRecipient(Message.RecipientType.TO, new InternetAddress(letter.to(), true));
        mail.setSubject(letter.subject().replaceAll("\\s+", " "), UTF_8);
        mail.setSentDate(Date.from(clock.instant()));
        // RFC 3834: no automatic answers, please.
        mail.setHeader("Auto-Submitted", "auto-generated");
        mail.setHeader("List-Id", "<" + letter.list() + "." + domain + ">");
        if (letter.inReplyTo().isPresent()) {
            String earlier = id(letter.inReplyTo().get(), domain);
            mail.setHeader("In-Reply-To", earlier);
            mail.setHeader("References", earlier);
        }
        mail.setContent(letter.attachments().isEmpty() ? alternatives(letter) : mixed(letter));
        mail.saveChanges();
        return mail;
    }

    private static String id(String key, String domain) {
        return "<" + key + "@" + domain + ">";
    }

    private static MimeMultipart alternatives(Letter letter) throws MessagingException {
        MimeBodyPart plain = new MimeBodyPart();
        plain.setText(letter.text(), UTF_8);
        MimeBodyPart rich = new MimeBodyPart();
        rich.setText(letter.html(), UTF_8, "html");
        return new MimeMultipart("alternative", plain, rich);
    }

    /** The texts first, then the files (RFC 2046, section 5.1.3). */
    private static MimeMultipart mixed(Letter letter) throws MessagingException {
        MimeBodyPart texts = new MimeBodyPart();
        texts.setContent(alternatives(letter));
        MimeMultipart all = new MimeMultipart("mixed", texts);
        for (Letter.Attachment one : letter.attachments()) {
            MimeBodyPart file = new MimeBodyPart();
            file.setDataHandler(new DataHandler(new ByteArrayDataSource(one.octets(), one.mediaType())));
            file.setFileName(one.name());
            file.setDisposition(Part.ATTACHMENT);
            all.addBodyPart(file);
        }
        return all;
    }

    /** The library would make up another one each time. */
    @Override
    protected void updateMessageID() throws MessagingException {
        setHeader("Message-ID", id);
    }
}
