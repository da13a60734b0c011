package org.roundsman.snmp.counter;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Counter32 and Counter64 by RFC 2578 sections 7.1.6 and 7.1.10; discontinuities by RFC 2863. */
class CounterTrackTest {

    @ParameterizedTest
    @CsvSource({
        "32,1000,5000,4000",
        "32,4294967000,704,1000",
        "32,4294967295,0,1",
        "32,0,4294967295,4294967295",
        "32,4000000000,500000000,794967296",
        "32,123456789,123456789,0",
        "32,4294960000,1000,8296",
        "64,18446744073709551000,384,1000",
        "64,18446744073709551615,0,1",
        "64,1000000000000,1037500000000,37500000000"
    })
    void growsAcrossWraps(int bits, String before, String after, double growth) {
        CounterTrack track = new CounterTrack();
        track.sample(bits, Long.parseUnsignedLong(before), 0, new Moment(0, 1));
        track.sample(bits, Long.parseUnsignedLong(after), 0, new Moment(60, 1));
        assertThat(track.growth()).isEqualTo(growth);
    }

    @Test
    void givesARatePerSecond() {
        CounterTrack octets = new CounterTrack();
        octets.sample(32, 4_294_960_000L, 0, new Moment(100, 1));
        octets.sample(32, 1_000, 0, new Moment(160, 1));
        assertThat(8 * octets.perSecond()).isEqualTo(1_106.13, within(0.01));
    }

    @Test
    void knowsNothingAcrossARestart() {
        CounterTrack track = new CounterTrack();
        track.sample(32, 4_000_000_000L, 0, new Moment(900, 1));
        track.sample(32, 500_000_000, 0, new Moment(20, 2));
        assertThat(track.growth()).isNaN();
        track.sample(32, 500_000_600, 0, new Moment(80, 2));
        assertThat(track.growth()).as("starts afresh from the new sample").isEqualTo(600);
    }

    @Test
    void knowsNothingAcrossADiscontinuityThoughTheCounterGrew() {
        CounterTrack track = new CounterTrack();
        track.sample(32, 1_000, 0, new Moment(900, 1));
        track.sample(32, 5_000, 86_400, new Moment(960, 1));
        assertThat(track.growth()).isNaN();
    }

    @Test
    void knowsNothingWithoutASampleBefore() {
        CounterTrack track = new CounterTrack();
        track.sample(32, 1_000, 0, new Moment(0, 1));
        assertThat(track.growth()).isNaN();
        assertThat(track.perSecond()).isNaN();
    }

    @Test
    void bridgesASampleThatWasMissed() {
        CounterTrack track = new CounterTrack();
        track.sample(32, 1_000, 0, new Moment(0, 1));
        track.miss();
        assertThat(track.growth()).isNaN();
        track.sample(32, 4_000, 0, new Moment(120, 1));
        assertThat(track.perSecond()).isEqualTo(25);
    }

    @Test
    void waitsForALongerDistance() {
        CounterTrack track = new CounterTrack();
        track.sample(32, 1_000, 0, new Moment(0, 1));
        track.sample(32, 1_100, 0, new Moment(0.3, 1));
        assertThat(track.growth()).isNaN();
        track.sample(32, 1_200, 0, new Moment(2, 1));
        assertThat(track.perSecond()).as("counted from the first of the three").isEqualTo(100);
    }

    /** Time in which a Counter32 of octets goes round: 34.359738368 s at 1 Gb/s, 3,435.97 s at 10 Mb/s (2^32 x 8 / rate). */
    @ParameterizedTest
    @CsvSource({
        "32, 34.35, 1e9, false",
        "32, 34.36, 1e9, true",
        "32, 343.5, 1e8, false",
        "32, 343.6, 1e8, true",
        "32, 3435.9, 1e7, false",
        "32, 3436, 1e7, true",
        "64, 86400, 1e11, false"
    })
    void knowsWhenANarrowCounterMayHaveGoneRoundUnseen(int bits, double seconds, double lineSpeed, boolean unseen) {
        CounterTrack track = new CounterTrack();
        track.sample(bits, 1_000, 0, new Moment(0, 1));
        assertThat(track.mayHaveWrappedUnseen(lineSpeed / 8)).isFalse();
        track.sample(bits, 9_000, 0, new Moment(seconds, 1));
        assertThat(track.mayHaveWrappedUnseen(lineSpeed / 8)).isEqualTo(unseen);
    }
}
