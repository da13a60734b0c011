package org.roundsman.system;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import org.roundsman.system.SetupException.Fault;

/**
 * The one folder in which the service keeps what is not in the database, and the embedded database itself. Mode 0700;
 * one instance at a time.
 */
public final class DataFolder {

    private final Path root;

    private DataFolder(Path root) {
        this.root = root;
    }

    /**
     * The folder at this path, made where it is missing.
     *
     * @throws SetupException when it cannot be made or written to
     */
    public static DataFolder at(Path path) {
        Path root = path.toAbsolutePath().normalize();
        try {
            PrivateFiles.folder(root);
            Files.delete(Files.createTempFile(root, "writable", null));
            return new DataFolder(root);
        } catch (IOException | UnsupportedOperationException e) {
            throw new SetupException(
                    Fault.DATA_FOLDER,
                    "The data folder " + root + " cannot be written to (" + e
                            + "). Let the user that runs the service own it, make room on its disk, or name another "
                            + "folder with --data-folder or roundsman.data-folder.",
                    e);
        }
    }

    /** Absolute path of the folder. */
    public Path path() {
        return root;
    }

    /** A sub-folder of mode 0700, made where it is missing. */
    public Path folder(String name) {
        Path folder = root.resolve(name);
        try {
            PrivateFiles.folder(folder);
            return folder;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Where the key for sealing secrets lies: see {@link SecretKey}. */
    public Path keyFile() {
        return root.resolve("secret.key");
    }

    /**
     * Claims the folder for this process until it ends, however it ends; the operating system lets go of the lock.
     *
     * @throws SetupException when another process has it
     */
    public Claim claim() {
        Path file = root.resolve("instance.lock");
        try {
            FileChannel channel = FileChannel.open(
                    file, StandardOpenOption.CREATE, StandardOpenOption.READ, StandardOpenOption.WRITE);
            Claim claim = Claim.tryOn(channel);
            if (claim != null) {
                return claim;
            }
            String owner = Claim.ownerIn(channel);
            channel.close();
            throw new SetupException(
                    Fault.ALREADY_RUNNING,
                    "Another instance" + owner + " is running on the data folder " + root
                            + ". Stop it first, or give this one its own folder with --data-folder.");
        } catch (IOException e) {
            throw new SetupException(Fault.DATA_FOLDER, "The lock file " + file + " cannot be used: " + e, e);
        }
    }
}
