package org.roundsman.mail;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.util.Optional;
import java.util.Properties;

/** What a connection to a mail server needs, whichever protocol it speaks: how long to wait, whom to trust, and a password. */
final class ServerAccess {

    private ServerAccess() {}

    /**
     * Properties of Jakarta Mail.
     *
     * @param protocol its name there: smtp, imap or imaps
     * @param mail says how long to wait, and which certificates to trust
     */
    static Properties properties(String protocol, MailSettings mail, MailSettings.Privacy privacy)
            throws IOException, GeneralSecurityException {
        String prefix = "mail." + protocol + ".";
        String wait = String.valueOf(mail.timeout().toMillis());
        Properties properties = new Properties();
        properties.put(prefix + "connectiontimeout", wait);
        properties.put(prefix + "timeout", wait);
        properties.put(prefix + "writetimeout", wait);
        properties.put(prefix + "ssl.checkserveridentity", "true");
        if (mail.trustedCertificates().isPresent()) {
            properties.put(
                    prefix + "ssl.socketFactory",
                    Trust.of(mail.trustedCertificates().get()));
        }
        boolean starttls = privacy == MailSettings.Privacy.STARTTLS;
        properties.put(prefix + "starttls.enable", String.valueOf(starttls));
        properties.put(prefix + "starttls.required", String.valueOf(starttls));
        properties.put(prefix + "ssl.enable", String.valueOf(privacy == MailSettings.Privacy.TLS));
        return properties;
    }

    /** What the file holds, its last line end left out; without a file the other; null where there is neither. */
    static String password(Optional<Path> file, Optional<String> otherwise) throws IOException {
        return file.isPresent() ? Files.readString(file.get()).replaceFirst("\\R$", "") : otherwise.orElse(null);
    }
}
