package org.roundsman.boot;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.roundsman.system.SetupException;

class OptionsTest {

    @Test
    void nothingMeansTheServiceWithItsDefaults() {
        Options options = Options.parse();
        assertThat(options.role()).isEqualTo(Role.CENTRAL);
        assertThat(options.settings()).isEmpty();
    }

    @Test
    void valuesStandAfterAnEqualsSignOrAsTheNextWord() {
        Options options =
                Options.parse("--role", "demo", "--port=9000", "--access-points", "2000", "--config", "a.properties");
        assertThat(options.role()).isEqualTo(Role.DEMO);
        assertThat(options.configuration()).contains(Path.of("a.properties"));
        assertThat(options.settings())
                .containsEntry("quarkus.http.port", "9000")
                .containsEntry("roundsman.demo.access-points", "2000")
                .containsEntry("roundsman.demo.enabled", "true");
    }

    @Test
    void theAgentsReadTheirOwnOptions() {
        Options options = Options.parse("--access-points", "300", "--role=agents", "--port=16161");
        assertThat(options.role()).isEqualTo(Role.AGENTS);
        assertThat(options.others()).containsExactly("--access-points", "300", "--port", "16161");
    }

    @Test
    void whatIsWrongIsNamedAndTheUsageShown() {
        assertThatThrownBy(() -> Options.parse("--role=king"))
                .isInstanceOf(SetupException.class)
                .hasMessageContaining("no role \"king\"")
                .hasMessageContaining("--role=central");
        assertThatThrownBy(() -> Options.parse("--colour=green")).hasMessageContaining("no option \"--colour\"");
        assertThatThrownBy(() -> Options.parse("--port")).hasMessageContaining("--port misses its value");
        assertThatThrownBy(() -> Options.parse("start")).hasMessageContaining("\"start\"");
    }
}
