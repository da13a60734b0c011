package org.roundsman.snmp;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.roundsman.snmp.ProfileText.Origin;

/** Sets of profiles, and what is refused. */
class ProfileSetTest {

    private static ProfileText text(String text) {
        return new ProfileText("host", text, Origin.WRITTEN);
    }

    @Test
    void laterOnesWinByName(@TempDir Path folder) throws IOException {
        Files.writeString(folder.resolve("h.yaml"), "profile: host\nabout: from the folder\n");
        assertThat(ProfileSet.load(List.of(folder)).about("host")).isEqualTo("from the folder");
        ProfileSet set = ProfileSet.load(List.of(folder), List.of(text("profile: host\nabout: written\n")));
        assertThat(set.about("host")).isEqualTo("written");
        assertThat(set.text("host").orElseThrow().origin()).isEqualTo(Origin.WRITTEN);
        assertThat(set.names()).containsExactly("demo", "host", "wlan-ieee");
    }

    @Test
    void allFaultsAreGivenAtOnceWithLineAndKey() {
        List<ProfileFault> faults = ProfileSet.check(text("profile: m\nscalars:\n  device.cpuu: 1.3.6.1.0\nmore: 1\n"));
        assertThat(faults).extracting(ProfileFault::line).containsExactly(3, 4);
        assertThat(faults.get(0).key()).isEqualTo("scalars.device.cpuu");
        assertThat(faults.get(0).text()).contains("did you mean device.cpu?");
    }

    /** A few hundred octets that stand for 10 to the 9th; YAML 1.2 allows aliases, so that somebody will try. */
    @Test
    void aliasesThatMultiplyAreRefused() {
        StringBuilder bomb = new StringBuilder("a: &a [x, x, x, x, x, x, x, x, x, x]\n");
        for (char c = 'b'; c <= 'j'; c++) {
            String before = "*" + (char) (c - 1);
            bomb.append(c).append(": &").append(c).append(" [").append(before);
            bomb.append((", " + before).repeat(9)).append("]\n");
        }
        assertThat(ProfileSet.check(text(bomb.toString()))).isNotEmpty().anySatisfy(fault -> assertThat(fault.text())
                .contains("aliases"));
        assertThat(ProfileSet.check(text("[".repeat(10_000)))).isNotEmpty();
        assertThat(ProfileSet.check(text("profile: m\nselect: &s\n  - *s\n"))).isNotEmpty();
        String long64 = "profile: m\n#" + "x".repeat(ProfileSet.LONGEST_TEXT);
        assertThat(ProfileSet.check(text(long64))).singleElement().satisfies(fault -> assertThat(fault.text())
                .contains("64 KiB"));
        assertThatThrownBy(() -> ProfileSet.load(List.of()).with(text(bomb.toString())))
                .isInstanceOf(ProfileException.class);
    }

    @Test
    void whichDevicesAProfileIsFor() {
        ProfileSet set = ProfileSet.load(List.of());
        assertThat(set.fit("host", "")).isEqualTo(ProfileSet.Fit.YES);
        assertThat(set.fit("demo", "1.3.6.1.4.1.32473.1.2")).isEqualTo(ProfileSet.Fit.YES);
        assertThat(set.fit("demo", "1.3.6.1.4.1.32473.2")).isEqualTo(ProfileSet.Fit.NO);
        assertThat(set.fit("wlan-ieee", "1.3.6.1.4.1.32473.2")).isEqualTo(ProfileSet.Fit.PERHAPS);
    }
}
