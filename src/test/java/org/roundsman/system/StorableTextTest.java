package org.roundsman.system;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;

class StorableTextTest {

    /** The encoder of the Java platform knows by itself what UTF-8 cannot write. */
    @Test
    void halvesOfCharactersAreNotKept() {
        List<String> texts =
                List.of("", "TR22-000417", "Z\u00fcrich", "\ud83d\udd27 loose", "\ud83d", "x\udd27", "\udd27\ud83d");
        assertThat(texts.stream().map(StorableText::keeps).toList())
                .isEqualTo(texts.stream()
                        .map(text -> StandardCharsets.UTF_8.newEncoder().canEncode(text))
                        .toList())
                .containsExactly(true, true, true, true, false, false, false);
    }

    /** The Unicode Standard, 3.9: what is ill-formed becomes U+FFFD, all else stays. */
    @Test
    void halvesOfCharactersAreReplacedInWhatIsTold() {
        assertThat(StorableText.whole("\ud83d\udd27 x\udd27y\ud83d")).isEqualTo("\ud83d\udd27 x\ufffdy\ufffd");
        assertThat(StorableText.whole("Z\u00fcrich")).isEqualTo("Z\u00fcrich");
    }

    /** PostgreSQL, chapter "Character Types": the character with code zero cannot be stored. */
    @Test
    void octetZeroIsNotKeptButCanBeWritten() {
        assertThat(StorableText.keeps("a\0b")).isFalse();
        assertThat(StorableText.keeps(StorableText.of("a\0b"))).isTrue();
    }
}
