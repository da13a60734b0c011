package org.roundsman.mail;

import io.smallrye.config.ConfigMapping;
import io.smallrye.config.WithDefault;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Optional;

/** Keys under {@code roundsman.mail}: the server that takes our mails. */
@ConfigMapping(prefix = "roundsman.mail")
public interface MailSettings {

    /** Name or address of the SMTP server; none means that no mail is sent. */
    Optional<String> host();

    /** TCP port of the server. */
    @WithDefault("587")
    @Min(1)
    @Max(65535)
    int port();

    /** How the connection is kept private. */
    @WithDefault("starttls")
    Privacy privacy();

    /** PEM file with the certificates to trust, in place of those of the Java runtime. */
    Optional<Path> trustedCertificates();

    /** Who we are to the server; none means that it asks for no sign-in. */
    Optional<String> user();

    /** Password of that user; {@link #passwordFile} is the better place. */
    Optional<String> password();

    /** File that holds the password, its last line end left out; wins over {@link #password}. */
    Optional<Path> passwordFile();

    /** Address that mails come from. */
    Optional<String> from();

    /** Name beside that address. */
    @WithDefault("Roundsman")
    String fromName();

    /** Longest wait for the server at each step. */
    @WithDefault("20s")
    Duration timeout();

    /** What keeps others from reading along. */
    enum Privacy {
        /** None: only towards a server on this machine or in a network of one's own. */
        NONE,
        /** RFC 3207, and nothing is sent where the server does not offer it. */
        STARTTLS,
        /** TLS from the first octet (RFC 8314). */
        TLS
    }
}
