package org.roundsman.web.page;

import static org.assertj.core.api.Assertions.assertThat;

import java.sql.SQLException;
import org.junit.jupiter.api.Test;

/** SQLSTATE classes: PostgreSQL documentation, appendix A. */
class PageErrorsTest {

    @Test
    void aLostDatabaseIsToldFromAFault() {
        assertThat(PageErrors.noDatabase(new IllegalStateException(new SQLException("refused", "08001"))))
                .isTrue();
        assertThat(PageErrors.noDatabase(new SQLException("terminating", "57P01")))
                .isTrue();
        assertThat(PageErrors.noDatabase(new SQLException("too many", "53300"))).isTrue();
        assertThat(PageErrors.noDatabase(new SQLException("syntax", "42601"))).isFalse();
        assertThat(PageErrors.noDatabase(new IllegalStateException("no cause"))).isFalse();
    }

    @Test
    void aCharacterThatNoTextCanHaveIsTheAskersFault() {
        assertThat(PageErrors.badCharacter(new IllegalStateException(new SQLException("0x00", "22021"))))
                .isTrue();
        assertThat(PageErrors.badCharacter(new SQLException("syntax", "42601"))).isFalse();
    }
}
