package org.roundsman.mail;

import java.nio.file.Path;
import java.time.Duration;
import java.util.Optional;

/** Settings for mail servers on loopback that ask for no sign-in. */
public record LocalMail(int port, MailSettings.Privacy privacy, Optional<Path> trustedCertificates)
        implements MailSettings {

    /** Without TLS. */
    public static LocalMail open(int port) {
        return new LocalMail(port, Privacy.NONE, Optional.empty());
    }

    /** A mailbox there. */
    public record Box(int port, Optional<String> user, Optional<Path> passwordFile) implements BounceSettings {

        @Override
        public Optional<String> host() {
            return Optional.of("127.0.0.1");
        }

        @Override
        public MailSettings.Privacy privacy() {
            return MailSettings.Privacy.NONE;
        }

        @Override
        public String folder() {
            return "INBOX";
        }

        @Override
        public Duration every() {
            return Duration.ofMinutes(5);
        }
    }

    @Override
    public Optional<String> host() {
        return Optional.of("127.0.0.1");
    }

    @Override
    public Optional<String> user() {
        return Optional.empty();
    }

    @Override
    public Optional<String> password() {
        return Optional.empty();
    }

    @Override
    public Optional<Path> passwordFile() {
        return Optional.empty();
    }

    @Override
    public Optional<String> from() {
        return Optional.of("reports@fernhollow.example");
    }

    @Override
    public String fromName() {
        return "Fernhollow Networks";
    }

    @Override
    public Duration timeout() {
        return Duration.ofSeconds(5);
    }
}
