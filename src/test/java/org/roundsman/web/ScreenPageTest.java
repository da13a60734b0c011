package org.roundsman.web;

import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** That the look at each page finds what it looks for; rules by the names that axe-core gives them. */
class ScreenPageTest {

    private static final String PAGE =
            "<!doctype html><html lang='en'><head><title>A page</title></head><body><main><h1>A page</h1>%s</main></body></html>";

    @AfterAll
    static void close() {
        Screen.closeAll();
    }

    private static void look(int width, String body) {
        try (Screen screen = Screen.open("about:blank", width)) {
            screen.page().setContent(PAGE.formatted(body));
            screen.check("planted");
        }
    }

    @Test
    void aGoodPageIsGood() {
        assertThatCode(() -> look(1280, "<p>Good.</p>")).doesNotThrowAnyException();
        assertThatCode(() -> look(390, "<p>Good.</p>")).doesNotThrowAnyException();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "1280 | <img src='data:,'> | image-alt",
                "390 | <input type='text'> | label",
                "390 | <a href='/a' style='font-size:8px'>a</a> <a href='/b' style='font-size:8px'>b</a> | target-size",
                "1280 | <p style='color:#bbb'>Pale words</p> | color-contrast",
                "390 | <div style='width:900px;height:9px'></div> | is wider than 390"
            })
    void aFaultIsFound(int width, String body, String fault) {
        assertThatThrownBy(() -> look(width, body))
                .isInstanceOf(AssertionError.class)
                .hasMessageContaining(fault);
    }
}
