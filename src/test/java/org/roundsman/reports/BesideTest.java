package org.roundsman.reports;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.concurrent.CountDownLatch;
import org.junit.jupiter.api.Test;

class BesideTest {

    @Test
    void theResultIsThatOfTheWork() {
        assertThat(Beside.start(() -> 6 * 7).result()).isEqualTo(42);
    }

    @Test
    void whatTheWorkThrowsComesOut() {
        Beside<String> failing = Beside.start(() -> {
            throw new IllegalArgumentException("no such site");
        });
        assertThatThrownBy(failing::result)
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("no such site");
    }

    @Test
    void anInterruptEndsTheWaitingAndStaysSet() {
        Beside<String> endless = Beside.start(() -> {
            new CountDownLatch(1).await();
            return "";
        });
        Thread.currentThread().interrupt();
        assertThatThrownBy(endless::result).isInstanceOf(IllegalStateException.class);
        assertThat(Thread.interrupted()).isTrue();
    }
}
