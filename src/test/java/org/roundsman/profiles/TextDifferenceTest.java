package org.roundsman.profiles;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.roundsman.profiles.TextDifference.Kind;
import org.roundsman.profiles.TextDifference.Line;

/** The reference is diff of GNU diffutils. */
class TextDifferenceTest {

    private static final String BEFORE = "profile: m\nselect:\n  - a\n  - b\ntables:\n  - x\n";
    private static final String AFTER = "profile: m\nabout: new\nselect:\n  - b\ntables:\n  - x\n  - y\n";

    @Test
    void addedAndRemovedLinesAreThoseThatDiffNames(@TempDir Path folder) throws IOException {
        Path before = Files.writeString(folder.resolve("before"), BEFORE);
        Path after = Files.writeString(folder.resolve("after"), AFTER);
        Process diff = new ProcessBuilder("diff", before.toString(), after.toString()).start();
        List<String> expected = new String(diff.getInputStream().readAllBytes(), StandardCharsets.UTF_8)
                .lines()
                .filter(line -> line.startsWith("<") || line.startsWith(">"))
                .toList();
        List<String> found = TextDifference.between(BEFORE, AFTER).stream()
                .filter(line -> line.kind() != Kind.SAME)
                .map(line -> (line.kind() == Kind.REMOVED ? "< " : "> ") + line.text())
                .toList();
        assertThat(found).isEqualTo(expected).isNotEmpty();
    }

    @Test
    void sameTextsHaveOnlySameLines() {
        assertThat(TextDifference.between(BEFORE, BEFORE))
                .extracting(Line::kind)
                .containsOnly(Kind.SAME);
        assertThat(TextDifference.between("", AFTER)).extracting(Line::kind).containsOnly(Kind.ADDED);
    }
}
