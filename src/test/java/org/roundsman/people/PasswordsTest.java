package org.roundsman.people;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** Format of the hash: Provos and Mazieres, A Future-Adaptable Password Scheme, 1999, section 5, and its usual prefix 2a. */
class PasswordsTest {

    private final Passwords passwords = new Passwords(10);

    @Test
    void aHashTellsItsCostAndFitsItsPasswordAlone() {
        String hash = passwords.hash("a password of some length");
        assertThat(hash)
                .matches("\\$2[aby]\\$10\\$[./A-Za-z0-9]{53}")
                .isNotEqualTo(passwords.hash("a password of some length"));
        assertThat(passwords.fits("a password of some length", hash)).isTrue();
        assertThat(passwords.fits("another", hash)).isFalse();
        assertThat(passwords.fits("a password of some length", null)).isFalse();
    }

    /** Made with crypt(3) of libxcrypt, cost 6. */
    @Test
    void whatOthersHashedFitsToo() {
        String hash = "$2a$06$If6bvum7DFjUnE9p2uDeDu0YHzrHM6tf.iqN8.yx.jNN1ILEf7h0i";
        assertThat(passwords.fits("abc", hash)).isTrue();
        assertThat(passwords.fits("abd", hash)).isFalse();
    }
}
