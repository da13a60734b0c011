package org.roundsman.web.page;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** WCAG 2.2: text 4.5 to 1 (1.4.3), marks and parts of the interface 3 to 1 (1.4.11), with its formula of luminance. */
class ContrastTest {

    private static final Path STYLES = Path.of("src/main/resources/META-INF/resources/assets/type.css");
    private static final Pattern COLOUR = Pattern.compile("--([a-z0-9-]+):\\s*(#[0-9a-f]{6});");

    /** Values computed by hand elsewhere, so that the formula below is checked itself. */
    @ParameterizedTest
    @CsvSource({
        "#000000, #ffffff, 21.0000", "#777777, #ffffff, 4.4781", "#767676, #ffffff, 4.5422",
        "#ff0000, #ffffff, 3.9985", "#ffa500, #000000, 10.6341", "#b00020, #ffffff, 7.3250"
    })
    void theFormulaGivesTheKnownRatios(String fore, String back, double ratio) {
        assertThat(contrast(fore, back)).isCloseTo(ratio, org.assertj.core.data.Offset.offset(0.0001));
    }

    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void textIsReadable(boolean dark) throws IOException {
        Map<String, String> colours = colours(dark);
        for (String back : new String[] {"paper", "sheet"}) {
            for (String fore : new String[] {"ink", "soft", "link", "fault"}) {
                check(colours, fore, back, 4.5);
            }
        }
        for (String severity : new String[] {"critical", "major", "minor", "warning", "indeterminate"}) {
            check(colours, "ink", severity, 4.5);
        }
        check(colours, "on-press", "press", 4.5);
        check(colours, "note-ink", "note", 4.5);
    }

    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void marksAndBarsStandOutFromTheSheetTheyAreOn(boolean dark) throws IOException {
        Map<String, String> colours = colours(dark);
        for (String mark :
                new String[] {"answering", "silent", "refusing", "unwatched", "u0", "u1", "u2", "u3", "u4", "ux", "edge"
                }) {
            check(colours, mark, "sheet", 3);
        }
    }

    /** The tints read in grey: each step is darker (or, in the dark, lighter) than the one before. */
    @ParameterizedTest
    @ValueSource(booleans = {false, true})
    void tintsOfUtilisationAreInOrderWithoutColour(boolean dark) throws IOException {
        Map<String, String> colours = colours(dark);
        for (int i = 0; i < 4; i++) {
            String less = colours.get("u" + i);
            String more = colours.get("u" + (i + 1));
            assertThat(contrast(more, colours.get("sheet"))).isGreaterThan(contrast(less, colours.get("sheet")) * 1.15);
        }
    }

    private static void check(Map<String, String> colours, String fore, String back, double least) {
        assertThat(contrast(colours.get(fore), colours.get(back)))
                .as(fore + " on " + back)
                .isGreaterThanOrEqualTo(least);
    }

    private static Map<String, String> colours(boolean dark) throws IOException {
        String text = Files.readString(STYLES);
        int split = text.indexOf("prefers-color-scheme: dark");
        assertThat(split).isPositive();
        Map<String, String> colours = new HashMap<>();
        Matcher matcher = COLOUR.matcher(dark ? text.substring(split) : text.substring(0, split));
        while (matcher.find()) {
            colours.put(matcher.group(1), matcher.group(2));
        }
        return colours;
    }

    private static double contrast(String one, String other) {
        double lighter = Math.max(luminance(one), luminance(other));
        double darker = Math.min(luminance(one), luminance(other));
        return (lighter + 0.05) / (darker + 0.05);
    }

    private static double luminance(String colour) {
        return 0.2126 * part(colour, 1) + 0.7152 * part(colour, 3) + 0.0722 * part(colour, 5);
    }

    private static double part(String colour, int at) {
        double value = Integer.parseInt(colour.substring(at, at + 2), 16) / 255.0;
        return value <= 0.04045 ? value / 12.92 : Math.pow((value + 0.055) / 1.055, 2.4);
    }
}
