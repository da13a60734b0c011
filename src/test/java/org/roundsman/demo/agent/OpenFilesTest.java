package org.roundsman.demo.agent;

import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.roundsman.demo.AgentsNotStarted;

class OpenFilesTest {

    @Test
    void tooLowALimitIsToldWithTheNumberNeededAndTheMend() {
        assertThatThrownBy(() -> OpenFiles.check(1000, 100, 1024))
                .isInstanceOf(AgentsNotStarted.class)
                .hasMessageContaining("1000 agents need 1300 open files")
                .hasMessageContaining("may have 1024")
                .hasMessageContaining("ulimit -n 1300");
        assertThatCode(() -> OpenFiles.check(700, 100, 1024)).doesNotThrowAnyException();
    }
}
