package org.roundsman.measure;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Channels to centre frequencies: figures worked out independently from the formulas of IEEE 802.11 (2407 + 5n,
 * 5000 + 5n, 5950 + 5n MHz), whose text was not at hand; channel lists from memory of the same standard.
 */
class BandTest {

    @ParameterizedTest
    @CsvSource({
        "2.4,1,2412",
        "2.4,2,2417",
        "2.4,6,2437",
        "2.4,11,2462",
        "2.4,13,2472",
        "2.4,14,2484",
        "5,36,5180",
        "5,48,5240",
        "5,64,5320",
        "5,100,5500",
        "5,144,5720",
        "5,149,5745",
        "5,165,5825",
        "5,177,5885",
        "6,1,5955",
        "6,5,5975",
        "6,37,6135",
        "6,93,6415",
        "6,97,6435",
        "6,185,6875",
        "6,233,7115",
        "6,2,5935"
    })
    void knowsTheCentreOfEachChannel(double band, int channel, int megahertz) {
        assertThat(Band.of(band).orElseThrow().centre(channel)).hasValue(megahertz);
    }

    @ParameterizedTest
    @CsvSource({"2.4,0", "2.4,15", "5,35", "5,68", "6,3", "6,237", "5,42", "6,0"})
    void refusesWhatIsNo20MegahertzChannel(double band, int channel) {
        assertThat(Band.of(band).orElseThrow().centre(channel)).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"5,42,5210", "5,155,5775", "5,50,5250"})
    void knowsCentresOfWiderChannels(double band, int number, int megahertz) {
        assertThat(Band.of(band).orElseThrow().frequency(number)).isEqualTo(megahertz);
    }

    @Test
    void countsTheChannelsOfEachBand() {
        assertThat(Band.BAND_2_4.channels()).hasSize(14);
        assertThat(Band.BAND_5.channels()).hasSize(28).startsWith(36, 40).endsWith(173, 177);
        assertThat(Band.BAND_6.channels()).hasSize(59).startsWith(1, 5).endsWith(229, 233);
    }

    @Test
    void hasNoBandOfAnotherName() {
        assertThat(Band.of(3.6)).isEmpty();
    }
}
