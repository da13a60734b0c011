package org.roundsman.web.page;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class LocalAddressTest {

    @ParameterizedTest
    @ValueSource(
            strings = {
                "https://elsewhere.example/",
                "//elsewhere.example",
                "/\\elsewhere.example",
                "",
                "sites/1",
                "/a b"
            })
    void nobodyIsSentElsewhereAfterSigningIn(String address) {
        assertThat(LocalAddress.of(address)).isEqualTo("/");
    }

    @ParameterizedTest
    @ValueSource(strings = {"/", "/sites/3", "/?search=pier&page=2", "/devices/7?range=week#charts"})
    void pagesOfOursAreKept(String address) {
        assertThat(LocalAddress.of(address)).isEqualTo(address);
    }
}
