package org.roundsman.mail;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.mail.AuthenticationFailedException;
import jakarta.mail.MessagingException;
import jakarta.mail.Session;
import jakarta.mail.Transport;
import jakarta.mail.internet.AddressException;
import jakarta.mail.internet.InternetAddress;
import java.io.IOException;
import java.security.GeneralSecurityException;
import java.time.Clock;
import java.util.Properties;
import org.eclipse.angus.mail.smtp.SMTPAddressFailedException;
import org.eclipse.angus.mail.smtp.SMTPSendFailedException;
import org.eclipse.angus.mail.smtp.SMTPSenderFailedException;
import org.jboss.logging.Logger;

/** Hands mails to the SMTP server of the settings, one connection a mail. Blocks; thread-safe. */
@ApplicationScoped
public class MailServer {

    private static final Logger LOG = Logger.getLogger(MailServer.class);
    private static final int LEAST_PERMANENT = 500;

    private final MailSettings settings;
    private final Clock clock;
    private final MailState state;

    @Inject
    public MailServer(MailSettings settings, Clock clock) {
        this.settings = settings;
        this.clock = clock;
        this.state = judge(settings);
        if (state instanceof MailState.Misset misset) {
            LOG.warn(misset.why());
        }
    }

    /** Whether mails can be sent, as far as the settings tell. */
    public MailState state() {
        return state;
    }

    private static MailState judge(MailSettings settings) {
        if (settings.host().filter(host -> !host.isBlank()).isEmpty()) {
            return new MailState.Off();
        }
        String from = settings.from().orElse("");
        if (!MailAddress.valid(from)) {
            return new MailState.Misset("roundsman.mail.from must be the address that mails come from");
        }
        if (settings.user().isPresent()
                && settings.password().isEmpty()
                && settings.passwordFile().isEmpty()) {
            return new MailState.Misset(
                    "roundsman.mail.user is set; its password is missing: roundsman.mail.password-file");
        }
        return new MailState.Ready(settings.host().get(), settings.port(), from);
    }

    /**
     * Hands it over; returns once the server has taken it.
     *
     * @throws MailFailure when it was not taken, or we cannot know
     */
    public void send(Letter letter) throws MailFailure {
        if (!(state instanceof MailState.Ready ready)) {
            throw new MailFailure("no mail server is set up", false, false, null);
        }
        boolean connected = false;
        try {
            Session session = Session.getInstance(properties(ready));
            Envelope mail = Envelope.of(session, letter, new InternetAddress(ready.from(), settings.fromName()), clock);
            try (Transport transport = session.getTransport()) {
                String password = ServerAccess.password(settings.passwordFile(), settings.password());
                transport.connect(ready.host(), ready.port(), settings.user().orElse(null), password);
                connected = true;
                transport.sendMessage(mail, mail.getAllRecipients());
            }
        } catch (MessagingException | IOException | GeneralSecurityException e) {
            throw new MailFailure(words(e), permanent(e), connected && answered(e) == 0, e);
        }
    }

    private Properties properties(MailState.Ready ready) throws IOException, GeneralSecurityException {
        Properties properties = ServerAccess.properties("smtp", settings, settings.privacy());
        properties.put("mail.transport.protocol", "smtp");
        properties.put("mail.smtp.auth", String.valueOf(settings.user().isPresent()));
        properties.put("mail.smtp.from", ready.from());
        return properties;
    }

    /** What the server answered, or what went wrong; holds no password, since the protocol never says it back. */
    private static String words(Exception e) {
        if (e instanceof AuthenticationFailedException) {
            return "the mail server refused our user or password: " + line(e.getMessage());
        }
        Throwable inner =
                e instanceof MessagingException mail && mail.getNextException() != null ? mail.getNextException() : e;
        String text = line(inner.getMessage());
        return inner instanceof MessagingException ? text : inner.getClass().getSimpleName() + ": " + text;
    }

    private static String line(String text) {
        return text == null ? "no reason given" : text.strip().replaceAll("\\s+", " ");
    }

    private static boolean permanent(Exception e) {
        boolean misset = e instanceof AuthenticationFailedException; // mended by changing settings, not the mail
        return !misset && (e instanceof AddressException || answered(e) >= LEAST_PERMANENT);
    }

    /** The code with which the server refused it, or 0. */
    private static int answered(Exception e) {
        int code = 0;
        for (Exception at = e; at instanceof MessagingException mail; at = mail.getNextException()) {
            code = Math.max(code, code(at));
        }
        return code;
    }

    private static int code(Exception e) {
        if (e instanceof SMTPAddressFailedException refused) {
            return refused.getReturnCode();
        }
        if (e instanceof SMTPSenderFailedException refused) {
            return refused.getReturnCode();
        }
        return e instanceof SMTPSendFailedException refused ? refused.getReturnCode() : 0;
    }
}
