package org.roundsman.system;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DataFolderTest {

    @TempDir
    Path parent;

    @Test
    void aFolderThatOthersCouldReadIsTakenAwayFromThem() throws Exception {
        Path path = Files.createDirectory(parent.resolve("data"));
        Files.setPosixFilePermissions(path, PosixFilePermissions.fromString("rwxr-xr-x"));
        DataFolder folder = DataFolder.at(path);
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(path)))
                .isEqualTo("rwx------");
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(folder.folder("spool"))))
                .isEqualTo("rwx------");
        assertThat(path).isDirectoryContaining("glob:**/spool");
    }

    @Test
    void aFolderThatCannotBeMadeIsNamedWithTheMend() throws Exception {
        Path file = Files.createFile(parent.resolve("file"));
        assertThatThrownBy(() -> DataFolder.at(file.resolve("data")))
                .isInstanceOf(SetupException.class)
                .hasMessageContaining(file.resolve("data").toString())
                .hasMessageContaining("--data-folder");
    }

    @Test
    void oneClaimAtATimeAndItEndsWithItsHolder() {
        DataFolder folder = DataFolder.at(parent.resolve("data"));
        try (Claim claim = folder.claim()) {
            assertThat(claim).isNotNull();
            assertThatThrownBy(folder::claim)
                    .isInstanceOf(SetupException.class)
                    .hasMessageContaining("Another instance (process "
                            + ProcessHandle.current().pid() + ") is running on the data folder " + folder.path());
        }
        folder.claim().close();
    }
}
