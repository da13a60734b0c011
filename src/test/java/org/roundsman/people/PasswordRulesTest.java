package org.roundsman.people;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** OWASP ASVS 5.0: 6.2.1 (length) and 6.2.4 (common passwords). */
class PasswordRulesTest {

    @Test
    void sevenCharactersAreTooFewAndEightAreEnough() {
        assertThat(PasswordRules.fault("h3ron-x", "wren")).isPresent();
        assertThat(PasswordRules.fault("h3ron-xy", "wren")).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"password", "PassWord", "12345678", "qwertyuiop", "welcome1", "aaaaaaaaaa", "abababab"})
    void whatEverybodyTriesFirstIsRefused(String password) {
        assertThat(PasswordRules.fault(password, "wren")).isPresent();
    }

    @Test
    void theSignInNameIsNotPartOfThePassword() {
        assertThat(PasswordRules.fault("my-Kestrel-77", "kestrel")).isPresent();
    }

    /** bcrypt takes 72 octets (Provos and Mazieres, A Future-Adaptable Password Scheme, 1999, section 3). */
    @Test
    void whatBcryptWouldCutOffIsRefused() {
        String word = "heron-42";
        assertThat(PasswordRules.fault(word.repeat(9), "wren")).isEmpty();
        assertThat(PasswordRules.fault(word.repeat(9) + "x", "wren")).isPresent();
        // ä is two octets in UTF-8: 40 characters of it are 80 octets
        assertThat(PasswordRules.fault("äbcd".repeat(15), "wren")).isPresent();
    }

    @Test
    void controlCharactersAreRefused() {
        assertThat(PasswordRules.fault("heron\u0000lantern", "wren")).isPresent();
    }
}
