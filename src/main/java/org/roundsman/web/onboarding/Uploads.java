package org.roundsman.web.onboarding;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.List;
import org.jboss.resteasy.reactive.multipart.FileUpload;
import org.roundsman.fleet.ImportFile;

/** The files of a form. They lie under names of the server's own choice, whatever the browser calls them. */
final class Uploads {

    private Uploads() {}

    /** Their content; a field in which nothing was chosen is passed over. */
    static List<ImportFile> read(List<FileUpload> uploads) {
        List<ImportFile> files = new ArrayList<>();
        for (FileUpload upload : uploads == null ? List.<FileUpload>of() : uploads) {
            if (upload.size() > 0 || !upload.fileName().isBlank()) {
                files.add(new ImportFile(upload.fileName(), content(upload)));
            }
        }
        return files;
    }

    private static byte[] content(FileUpload upload) {
        try {
            return Files.readAllBytes(upload.uploadedFile());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
