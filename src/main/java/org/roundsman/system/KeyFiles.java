package org.roundsman.system;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import org.roundsman.system.SetupException.Fault;

/**
 * The key file of a data folder while its key is changed. The next key lies beside the one in use until every secret is
 * sealed under it; the former one stays, under a name with its id. No key is ever deleted here. The caller has claimed the
 * folder.
 */
public final class KeyFiles {

    private final Path current;
    private final Path next;

    private KeyFiles(Path current) {
        this.current = current;
        this.next = current.resolveSibling(current.getFileName() + ".new");
    }

    public static KeyFiles in(DataFolder folder) {
        return new KeyFiles(folder.keyFile());
    }

    /** Whether a next key was made and has not come into use. */
    public boolean changing() {
        return Files.exists(next);
    }

    /**
     * The key in use.
     *
     * @throws SetupException when there is none, or it cannot be used
     */
    public SecretKey current() {
        if (Files.notExists(current)) {
            throw new SetupException(
                    Fault.KEY_FILE,
                    "There is no key file " + current
                            + ". Put it back from a backup, or name the right data folder with"
                            + " --data-folder; a first start of the service makes one.");
        }
        return SecretKey.in(current);
    }

    /**
     * The next key, made now unless there is one, and on disk with its name.
     *
     * @throws SetupException when it cannot be made or used
     */
    public SecretKey next() {
        SecretKey key = SecretKey.in(next);
        try {
            sync();
        } catch (IOException e) {
            throw failed(e);
        }
        return key;
    }

    /** Where the key with that id stays once another one is in use. */
    private Path former(SecretKey key) {
        return current.resolveSibling(current.getFileName() + "." + key.idText() + ".old");
    }

    /**
     * Brings the next key into use, in one step that a crash leaves either undone or done.
     *
     * @return where the former key is kept
     * @throws SetupException when the files cannot be renamed; doing it again is safe
     */
    public Path promote() {
        Path former = former(current());
        try {
            if (Files.notExists(former)) {
                Files.createLink(former, current);
            }
            sync();
            Files.move(next, current, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
            sync();
            return former;
        } catch (IOException e) {
            throw failed(e);
        }
    }

    /** Names of files survive a power failure from here on. */
    private void sync() throws IOException {
        try (FileChannel folder = FileChannel.open(current.getParent(), StandardOpenOption.READ)) {
            folder.force(true);
        }
    }

    private SetupException failed(IOException e) {
        return new SetupException(
                Fault.KEY_FILE,
                "The key files " + current + " and " + next + " cannot be written (" + e
                        + "). Let the user that runs the service own their folder, make room, and try again.",
                e);
    }
}
