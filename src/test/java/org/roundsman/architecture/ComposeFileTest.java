package org.roundsman.architecture;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.yaml.snakeyaml.LoaderOptions;
import org.yaml.snakeyaml.Yaml;
import org.yaml.snakeyaml.constructor.SafeConstructor;

/**
 * docker-compose.yml says what its description promises. Containers are not run in these tests: this reads the file as
 * the Compose Specification defines it.
 */
class ComposeFileTest {

    @Test
    void theServiceWaitsForItsDatabaseAndBothAreChecked() throws IOException {
        assertThat(at("services.roundsman.depends_on.database.condition")).isEqualTo("service_healthy");
        assertThat(at("services.roundsman.healthcheck.test")).asList().contains("/opt/roundsman/deploy/healthy");
        assertThat(at("services.database.healthcheck.test")).asList().contains("pg_isready");
        assertThat(at("services.database.image")).isEqualTo("postgres:18");
    }

    @Test
    void passwordsComeFromFilesAndDataLivesInVolumes() throws IOException {
        assertThat(at("services.roundsman.environment.ROUNDSMAN_DATABASE_PASSWORD_FILE"))
                .isEqualTo("/run/secrets/database_password");
        assertThat(at("services.database.environment.POSTGRES_PASSWORD_FILE"))
                .isEqualTo("/run/secrets/database_password");
        assertThat(at("secrets.database_password.file").toString()).startsWith(".roundsman/");
        assertThat(at("services.roundsman.secrets")).isEqualTo(List.of("database_password"));
        assertThat(at("services.roundsman.volumes")).isEqualTo(List.of("service:/var/lib/roundsman"));
        assertThat(at("volumes").toString()).contains("service", "database");
        assertThat(Files.readString(Path.of("docker-compose.yml"))).doesNotContain("PASSWORD:");
    }

    @Test
    void whatTheImageIsBuiltFromExists() throws IOException {
        assertThat(Path.of(at("services.roundsman.build.dockerfile").toString()))
                .exists();
        for (String line : Files.readAllLines(Path.of("deploy/Containerfile"))) {
            if (line.startsWith("COPY deploy/")) {
                String[] words = line.split(" ");
                for (int i = 1; i < words.length - 1; i++) {
                    assertThat(Path.of(words[i])).exists();
                }
            }
        }
    }

    private static Object at(String path) throws IOException {
        Object node = new Yaml(new SafeConstructor(new LoaderOptions()))
                .load(Files.readString(Path.of("docker-compose.yml")));
        for (String key : path.split("\\.")) {
            assertThat(node).as(path).isInstanceOf(Map.class);
            node = ((Map<?, ?>) node).get(key);
        }
        return node;
    }
}
