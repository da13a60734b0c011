package org.roundsman.snmp.notice;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.InetAddress;
import java.net.UnknownHostException;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.roundsman.snmp.NotificationLimits;
import org.roundsman.snmp.NotificationSender;
import org.roundsman.snmp.SnmpAccess;

/** What bounds the work for one address, and the windows of time. */
class BoundsTest {

    private static final long SECOND = 1_000_000_000L;

    private static InetAddress address(int number) {
        try {
            return InetAddress.getByAddress(new byte[] {127, 0, (byte) (number >> 8), (byte) number});
        } catch (UnknownHostException e) {
            throw new IllegalStateException(e);
        }
    }

    @Test
    void anAddressMaySendABurstAndThenSoManyASecond() {
        SourceGate gate = new SourceGate(new NotificationLimits(50, 10));
        assertThat(IntStream.range(0, 1_000)
                        .filter(i -> gate.admits(address(1), 0))
                        .count())
                .isEqualTo(50);
        assertThat(IntStream.range(0, 1_000)
                        .filter(i -> gate.admits(address(1), SECOND))
                        .count())
                .isEqualTo(10);
        assertThat(gate.admits(address(2), SECOND)).isTrue();
    }

    /** RFC 3414 section 3.2 step 7 b, rows: boots and time known, then received after so many seconds of ours. */
    @ParameterizedTest
    @CsvSource({
        "5,1000,5,1001,0,true",
        "5,1000,5,1000,150,true",
        "5,1000,5,1000,151,false",
        "5,1000,5,850,0,true",
        "5,1000,5,849,0,false",
        "5,1000,4,9999,0,false",
        "5,1000,6,0,0,true",
        "5,1000,2147483647,1001,0,false"
    })
    void theTimeWindow(int boots, int time, int nextBoots, int nextTime, long after, boolean inTime) {
        EngineClocks clocks = new EngineClocks();
        assertThat(clocks.isInTime(address(1), "aa", boots, time, 0)).isTrue();
        assertThat(clocks.isInTime(address(1), "aa", nextBoots, nextTime, after * SECOND))
                .isEqualTo(inTime);
        assertThat(clocks.isInTime(address(2), "aa", 1, 1, 0))
                .as("another address")
                .isTrue();
    }

    @Test
    void aRepeatIsForgottenAfterItsTimeCountedFromTheFirst() {
        Repeats repeats = new Repeats(60 * SECOND);
        Repeats.Key key = repeats.key(1, new byte[] {1, 2});
        assertThat(repeats.isRepeated(key, 0)).isFalse();
        repeats.take(key, 0);
        assertThat(repeats.isRepeated(key, 59 * SECOND)).isTrue();
        assertThat(repeats.isRepeated(repeats.key(2, new byte[] {1, 2}), 59 * SECOND))
                .isFalse();
        assertThat(repeats.isRepeated(key, 61 * SECOND)).isFalse();
    }

    @Test
    void repeatsTakeBoundedMemory() {
        Repeats repeats = new Repeats(60 * SECOND);
        for (int i = 0; i < 50_000; i++) {
            Repeats.Key key = repeats.key(i, new byte[0]);
            repeats.isRepeated(key, 0);
            repeats.take(key, 0);
        }
        assertThat(repeats.size()).isLessThanOrEqualTo(8_192);
    }

    private static Attribution.Fit fit(long id, long group, boolean own, String engine) {
        return new Attribution.Fit(
                new NotificationSender(id, group, new SnmpAccess.Community(2, "x"), List.of(), engine), own);
    }

    @Test
    void aSenderIsCertainOrThereIsNone() {
        assertThat(Attribution.of(List.of(), "")).isEmpty();
        assertThat(Attribution.of(List.of(fit(1, 1, false, "")), "aa"))
                .map(NotificationSender::id)
                .contains(1L);
        List<Attribution.Fit> neighbours = List.of(fit(1, 1, true, "aa"), fit(2, 1, false, "bb"));
        assertThat(Attribution.of(neighbours, "")).map(NotificationSender::id).contains(1L);
        assertThat(Attribution.of(neighbours, "bb")).map(NotificationSender::id).contains(2L);
        assertThat(Attribution.of(List.of(fit(1, 1, true, ""), fit(2, 1, true, "")), ""))
                .isEmpty();
        assertThat(Attribution.of(List.of(fit(1, 1, true, ""), fit(2, 2, false, "")), ""))
                .as("of two customers")
                .isEmpty();
        assertThat(Attribution.of(List.of(fit(1, 1, true, "aa"), fit(2, 2, true, "aa")), "aa"))
                .as("engine IDs repeat")
                .isEmpty();
    }
}
