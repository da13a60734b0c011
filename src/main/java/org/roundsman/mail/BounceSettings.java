package org.roundsman.mail;

import io.smallrye.config.ConfigMapping;
import io.smallrye.config.WithDefault;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Optional;

/** Keys under {@code roundsman.mail.bounces}: the mailbox of the address that our mails come from, to which they come back. */
@ConfigMapping(prefix = "roundsman.mail.bounces")
public interface BounceSettings {

    /** Name or address of the IMAP server; none means that nothing is read. */
    Optional<String> host();

    /** TCP port of the server. */
    @WithDefault("993")
    @Min(1)
    @Max(65535)
    int port();

    /** How the connection is kept private. */
    @WithDefault("tls")
    MailSettings.Privacy privacy();

    /** Who we are to the server. */
    Optional<String> user();

    /** File that holds the password, its last line end left out. */
    Optional<Path> passwordFile();

    /** Name of the folder. */
    @WithDefault("INBOX")
    String folder();

    /** How often it is read. */
    @WithDefault("5m")
    Duration every();
}
