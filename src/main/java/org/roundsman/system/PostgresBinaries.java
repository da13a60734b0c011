package org.roundsman.system;

import io.zonky.test.db.postgres.embedded.DefaultPostgresBinaryResolver;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.Locale;
import org.apache.commons.compress.archivers.tar.TarArchiveEntry;
import org.apache.commons.compress.archivers.tar.TarArchiveInputStream;
import org.apache.commons.compress.compressors.xz.XZCompressorInputStream;
import org.roundsman.system.SetupException.Fault;

/** Unpacks the PostgreSQL that travels with the program, once per build of it, into the data folder. */
final class PostgresBinaries {

    private static final int OWNER_MAY_RUN = 0100;

    private PostgresBinaries() {}

    /** The unpacked installation below this folder, with bin, lib and share in it. */
    static Path below(Path folder) throws IOException {
        byte[] archive = archive();
        Path home = folder.resolve(fingerprint(archive));
        if (Files.isDirectory(home)) {
            return home;
        }
        Path draft = Files.createTempDirectory(folder, "unpacking");
        unpack(archive, draft);
        Files.move(draft, home, StandardCopyOption.ATOMIC_MOVE);
        return home;
    }

    private static byte[] archive() throws IOException {
        String system = System.getProperty("os.name").toLowerCase(Locale.ROOT).startsWith("mac") ? "Darwin" : "Linux";
        String machine = System.getProperty("os.arch");
        try (InputStream stream = DefaultPostgresBinaryResolver.INSTANCE.getPgBinary(system, machine)) {
            return stream.readAllBytes();
        } catch (IllegalStateException e) {
            throw new SetupException(
                    Fault.DATABASE,
                    "No PostgreSQL travels with the program for " + system + " on " + machine
                            + ". Name an external one with roundsman.database.url.",
                    e);
        }
    }

    private static String fingerprint(byte[] archive) {
        try {
            byte[] digest = MessageDigest.getInstance("SHA-256").digest(archive);
            return HexFormat.of().formatHex(Arrays.copyOf(digest, 8));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("SHA-256 is part of every Java runtime", e);
        }
    }

    private static void unpack(byte[] archive, Path target) throws IOException {
        try (var tar = new TarArchiveInputStream(new XZCompressorInputStream(new ByteArrayInputStream(archive)))) {
            for (TarArchiveEntry entry = tar.getNextEntry(); entry != null; entry = tar.getNextEntry()) {
                Path path = target.resolve(entry.getName()).normalize();
                if (!path.startsWith(target)) {
                    throw new IOException("entry outside the archive: " + entry.getName());
                }
                place(tar, entry, path);
            }
        }
    }

    private static void place(InputStream content, TarArchiveEntry entry, Path path) throws IOException {
        if (entry.isDirectory()) {
            Files.createDirectories(path);
            return;
        }
        Files.createDirectories(path.getParent());
        if (entry.isSymbolicLink()) {
            Files.createSymbolicLink(path, Path.of(entry.getLinkName()));
        } else if (entry.isFile()) {
            Files.copy(content, path);
            if ((entry.getMode() & OWNER_MAY_RUN) != 0 && !path.toFile().setExecutable(true, true)) {
                throw new IOException(path + " cannot be made runnable");
            }
        }
    }
}
