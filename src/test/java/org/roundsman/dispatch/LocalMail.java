package org.roundsman.dispatch;

import java.nio.file.Path;
import java.time.Duration;
import java.util.Optional;
import org.roundsman.mail.BounceSettings;
import org.roundsman.mail.MailSettings;

/** Settings for mail servers on loopback. */
record LocalMail(int port) implements MailSettings {

    /** A mailbox there. */
    record Box(int port, Optional<String> user, Optional<Path> passwordFile) implements BounceSettings {

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
    public Privacy privacy() {
        return Privacy.NONE;
    }

    @Override
    public Optional<Path> trustedCertificates() {
        return Optional.empty();
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
