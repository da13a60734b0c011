package org.roundsman.mail;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.mail.Flags;
import jakarta.mail.Folder;
import jakarta.mail.Message;
import jakarta.mail.MessagingException;
import jakarta.mail.Session;
import jakarta.mail.Store;
import jakarta.mail.internet.MimeMessage;
import jakarta.mail.search.FlagTerm;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.security.GeneralSecurityException;
import java.util.List;
import java.util.Optional;
import java.util.Properties;
import java.util.function.Consumer;
import org.jboss.logging.Logger;

/**
 * Reads by IMAP (RFC 9051) what mail servers say became of our mails. Only notifications that have not been read are looked at;
 * other mails stay as they are. Blocks; one at a time.
 */
@ApplicationScoped
public class BounceReader {

    private static final Logger LOG = Logger.getLogger(BounceReader.class);

    /** Larger ones, in octets, are not looked into: a returned report has a few megabytes at most. */
    private static final int LARGEST = 16 * 1024 * 1024;

    private static final int MOST_AT_ONCE = 200;

    private final BounceSettings settings;
    private final MailSettings mail;

    @Inject
    public BounceReader(BounceSettings settings, MailSettings mail) {
        this.settings = settings;
        this.mail = mail;
    }

    /** Whether there is a mailbox to read. */
    public boolean open() {
        return settings.host().filter(host -> !host.isBlank()).isPresent();
    }

    /**
     * Hands over what is new. A notification is marked as read after all of it was handed over without an exception, so that it comes
     * again otherwise.
     *
     * @return how many notifications were marked as read
     * @throws MailFailure when the mailbox could not be read
     */
    public int read(Consumer<Bounce> taken) throws MailFailure {
        String protocol = settings.privacy() == MailSettings.Privacy.TLS ? "imaps" : "imap";
        try {
            Properties properties = ServerAccess.properties(protocol, mail, settings.privacy());
            properties.put("mail." + protocol + ".peek", "true");
            Session session = Session.getInstance(properties);
            try (Store store = session.getStore(protocol)) {
                store.connect(
                        settings.host().orElseThrow(),
                        settings.port(),
                        settings.user().orElse(null),
                        ServerAccess.password(settings.passwordFile(), Optional.empty()));
                try (Folder folder = store.getFolder(settings.folder())) {
                    folder.open(Folder.READ_WRITE);
                    return read(session, folder, taken);
                }
            }
        } catch (MessagingException | IOException | GeneralSecurityException e) {
            String why = e.getMessage() == null ? e.getClass().getSimpleName() : e.getMessage();
            throw new MailFailure("the mailbox could not be read: " + why.strip(), false, false, e);
        }
    }

    private static int read(Session session, Folder folder, Consumer<Bounce> taken)
            throws MessagingException, IOException {
        Message[] unread = folder.search(new FlagTerm(new Flags(Flags.Flag.SEEN), false));
        int read = 0;
        for (Message message : unread) {
            if (read < MOST_AT_ONCE && message.isMimeType("multipart/report")) {
                bounces(session, message).forEach(taken);
                message.setFlag(Flags.Flag.SEEN, true);
                read++;
            }
        }
        return read;
    }

    /** Of a whole copy, so that nothing is fetched piece by piece and nothing marked by reading. */
    private static List<Bounce> bounces(Session session, Message message) throws MessagingException, IOException {
        if (message.getSize() > LARGEST) {
            LOG.warnf("A mail of %d octets in the mailbox of returned mails is not looked into", message.getSize());
            return List.of();
        }
        ByteArrayOutputStream copy = new ByteArrayOutputStream();
        message.writeTo(copy);
        try {
            return StatusReport.read(new MimeMessage(session, new ByteArrayInputStream(copy.toByteArray())));
        } catch (MessagingException e) {
            LOG.warnf("A notification in the mailbox of returned mails cannot be understood: %s", e.getMessage());
            return List.of();
        }
    }
}
