package org.roundsman.paper;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Base64;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** PDF pages, read back by Debian's poppler tools. */
class PaperTest {

    /** A PNG of one dot. */
    private static final String DOT =
            "iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==";

    @TempDir
    Path folder;

    private static String page(String body) {
        return "<html lang=\"en\"><head><title>A page</title><meta name=\"subject\" content=\"A test\"/>"
                + "<style>@page { size: A4 } body { font-family: Figtree }</style></head><body>" + body
                + "</body></html>";
    }

    private String run(String tool, String body, String... more) throws IOException, InterruptedException {
        Path file = folder.resolve("page.pdf");
        Files.write(file, new Paper().pdf(page(body)));
        List<String> command = new java.util.ArrayList<>(List.of(tool, file.toString()));
        command.addAll(List.of(more));
        Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
        String text = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(process.waitFor()).as(text).isZero();
        return text;
    }

    @Test
    void wordsComeBackAsTheyWere() throws IOException, InterruptedException {
        assertThat(run("pdftotext", "<p>Łódź, Ærø, Šibenik, Győr: 5&#160;GHz · −62&#160;dBm “7”</p>", "-"))
                .contains("Łódź, Ærø, Šibenik, Győr: 5 GHz · −62 dBm “7”");
    }

    /** U+0001 is in no XML document; of the others our fonts have no picture. */
    @Test
    void whatCannotBePrintedDoesNoHarm() throws IOException, InterruptedException {
        assertThat(run("pdftotext", "<p>before \u0001 Жук 雪 \ud83d\ude00 after</p>", "-"))
                .contains("before ")
                .contains(" after");
    }

    @Test
    void everyFontIsInside() throws IOException, InterruptedException {
        assertThat(run("pdffonts", "<p>plain <strong style=\"font-weight: 600\">bold</strong></p>")
                        .lines()
                        .skip(2))
                .hasSize(2)
                .allMatch(line -> line.contains("Figtree"))
                .allMatch(line -> line.matches(".*\\s+yes\\s+yes\\s+(yes|no)\\s+\\d+\\s+\\d+\\s*"));
    }

    @Test
    void nothingIsFetched() throws IOException, InterruptedException {
        Path secret = folder.resolve("secret.css");
        Files.writeString(secret, "p::after { content: 'fetched' }");
        String text = run(
                "pdftotext",
                "<link rel=\"stylesheet\" href=\"" + secret.toUri() + "\"/><p>alone</p><img alt=\"x\" src=\""
                        + secret.toUri() + "\"/>",
                "-");
        assertThat(text).contains("alone").doesNotContain("fetched");
    }

    @Test
    void picturesOfThePageItselfAreShown() throws IOException, InterruptedException {
        assertThat(run("pdfimages", "<img alt=\"a dot\" src=\"data:image/png;base64," + DOT + "\"/>", "-list"))
                .contains("image");
    }

    @Test
    void drawingsAreDrawnAndLoadNothing() throws IOException, InterruptedException {
        Path secret = folder.resolve("secret.png");
        Files.write(secret, Base64.getDecoder().decode(DOT));
        String svg =
                "<svg xmlns=\"http://www.w3.org/2000/svg\" xmlns:xlink=\"http://www.w3.org/1999/xlink\" alt=\"a box\""
                        + " width=\"100\" height=\"50\" viewBox=\"0 0 100 50\"><rect width=\"100\" height=\"50\" fill=\"#0072b2\"/>"
                        + "<text x=\"5\" y=\"20\" font-family=\"Figtree\" font-size=\"10\">within</text></svg>";
        assertThat(run("pdftotext", svg + "<p>beneath</p>", "-")).contains("beneath");
        String outside =
                svg.replace("<rect", "<image xlink:href=\"" + secret.toUri() + "\" width=\"9\" height=\"9\"/><rect");
        assertThat(run("pdfimages", outside, "-list").lines().skip(2)).isEmpty();
    }

    @Test
    void narrowSpacesAreNotMissing() throws IOException, InterruptedException {
        String text = run("pdftotext", "<p>1\u202f234 et 5\u202f%</p>", "-");
        assertThat(text.replace('\u00a0', ' ')).contains("1 234 et 5 %");
    }
}
