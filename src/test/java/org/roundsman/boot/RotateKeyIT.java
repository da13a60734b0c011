package org.roundsman.boot;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.roundsman.testing.Program;

/** Changing the key with the packaged program, as docs/operations.md says. */
class RotateKeyIT {

    @TempDir
    Path parent;

    @Test
    void theKeyIsChangedWhileTheServiceIsStoppedAndNotBefore() throws Exception {
        Path folder = parent.resolve("data");
        int port = Program.freePort();
        String before;
        try (Program service = Program.start(folder, port).awaitReady()) {
            before = key(folder);
            try (Program refused = Program.start(folder, Program.freePort(), "--role=rotate-key")) {
                assertThat(refused.awaitEnd()).isEqualTo(12);
                assertThat(refused.output())
                        .contains("The change of the key did not come to its end")
                        .contains("Stop it");
            }
            assertThat(key(folder)).isEqualTo(before);
            assertThat(service.terminate()).isEqualTo(143);
        }
        try (Program command = Program.start(folder, port, "--role=rotate-key")) {
            assertThat(command.awaitEnd()).isZero();
            assertThat(command.output()).contains("The key was changed from").contains("Back up secret.key now");
        }
        assertThat(key(folder)).isNotEqualTo(before);
        assertThat(former(folder)).hasSize(1);
        try (Program service = Program.start(folder, port).awaitReady()) {
            assertThat(service.output()).doesNotContain("cannot be opened").doesNotContain("ERROR");
        }
    }

    private static String key(Path folder) throws Exception {
        return Files.readString(folder.resolve("secret.key"));
    }

    private static List<Path> former(Path folder) throws Exception {
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(file -> file.toString().endsWith(".old")).toList();
        }
    }
}
