package org.roundsman.system;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.EnumSet;
import java.util.Set;

/** Files and folders that nobody but their owner may open. POSIX file systems only. */
final class PrivateFiles {

    private static final Set<PosixFilePermission> OWNER_FILE = PosixFilePermissions.fromString("rw-------");
    private static final Set<PosixFilePermission> OWNER_FOLDER = PosixFilePermissions.fromString("rwx------");

    private PrivateFiles() {}

    /** Makes the folder and its parents where they are missing, and takes the folder itself away from others. */
    static void folder(Path folder) throws IOException {
        if (!Files.isDirectory(folder)) {
            Files.createDirectories(folder, PosixFilePermissions.asFileAttribute(OWNER_FOLDER));
        }
        if (!Files.getPosixFilePermissions(folder).equals(OWNER_FOLDER)) {
            Files.setPosixFilePermissions(folder, OWNER_FOLDER);
        }
    }

    /**
     * Creates the file with this text at once and on disk, or leaves an existing one as it is: after a crash there is the
     * whole file or none.
     *
     * @return whether this call made it
     */
    static boolean createOnce(Path file, String text) throws IOException {
        Path draft = file.resolveSibling(
                file.getFileName() + "." + ProcessHandle.current().pid() + ".new");
        Files.deleteIfExists(draft);
        var options = EnumSet.of(StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE);
        try (var channel = FileChannel.open(draft, options, PosixFilePermissions.asFileAttribute(OWNER_FILE))) {
            channel.write(ByteBuffer.wrap(text.getBytes(StandardCharsets.US_ASCII)));
            channel.force(true);
        }
        try {
            Files.createLink(file, draft); // unlike a move, a link never replaces what is there
            return true;
        } catch (FileAlreadyExistsException e) {
            return false;
        } finally {
            Files.delete(draft);
        }
    }

    /** Whether somebody besides the owner may read, write or run it. */
    static boolean openToOthers(Path file) throws IOException {
        var beyondOwner = EnumSet.copyOf(Files.getPosixFilePermissions(file, LinkOption.NOFOLLOW_LINKS));
        beyondOwner.removeAll(OWNER_FOLDER);
        return !beyondOwner.isEmpty();
    }
}
