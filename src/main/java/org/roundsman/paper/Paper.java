package org.roundsman.paper;

import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FSFontUseCase;
import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.svgsupport.BatikSVGDrawer;
import com.openhtmltopdf.util.XRLog;
import jakarta.inject.Singleton;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.EnumSet;
import java.util.Set;
import java.util.regex.Pattern;

/** Makes pages; their size stands in the style sheet, A4 where it does not. Thread-safe. */
@Singleton
public class Paper {

    private static final String FAMILY = "Figtree";
    private static final int REGULAR = 400;
    private static final int SEMIBOLD = 600;
    private static final Set<FSFontUseCase> EVERYWHERE = EnumSet.of(FSFontUseCase.DOCUMENT, FSFontUseCase.SVG);

    /** XML 1.0 (fifth edition), production 2: every character but these may stand in a document. */
    private static final Pattern NOT_IN_XML =
            Pattern.compile("[^\\x09\\x0a\\x0d\\x20-\\ud7ff\\ue000-\\ufffd\\x{10000}-\\x{10ffff}]");

    private static final String UNREADABLE = "\ufffd";

    /** The only addresses that are followed: pictures that the page itself holds (RFC 2397). */
    private static final Pattern OWN_PICTURE = Pattern.compile("data:image/(png|jpeg);base64,[A-Za-z0-9+/=]*");

    /** Our fonts have no narrow spaces; the usual no-break space stands for them. */
    private static final Pattern NARROW_SPACE = Pattern.compile("[\\u2009\\u202f]");

    static {
        XRLog.setLoggerImpl(new PaperLog());
    }

    private final byte[] regular = file("figtree-regular.ttf");
    private final byte[] semibold = file("figtree-semibold.ttf");

    /**
     * The PDF of a page, tagged for those who listen (PDF/UA). Its styles stand in the page itself, and so do its pictures: SVG,
     * which runs no scripts and loads nothing, and PNG or JPEG as data URIs. Nothing else is loaded. Characters that XML does not
     * know, or our fonts do not have, come out as a sign that something is missing.
     *
     * @param page XML with {@code <html lang>}, a title and {@code <meta name="subject">}; each picture with {@code alt}
     */
    public byte[] pdf(String page) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        PdfRendererBuilder builder = new PdfRendererBuilder();
        builder.useFont(() -> new ByteArrayInputStream(regular), FAMILY, REGULAR, FontStyle.NORMAL, true, EVERYWHERE);
        builder.useFont(() -> new ByteArrayInputStream(semibold), FAMILY, SEMIBOLD, FontStyle.NORMAL, true, EVERYWHERE);
        builder.usePdfUaAccessibility(true);
        builder.useUriResolver(
                (base, uri) -> uri != null && OWN_PICTURE.matcher(uri).matches() ? uri : null);
        builder.withProducer("Roundsman");
        builder.withHtmlContent(printable(page), null);
        builder.toStream(out);
        try (BatikSVGDrawer pictures = new BatikSVGDrawer(
                BatikSVGDrawer.SvgScriptMode.SECURE, BatikSVGDrawer.SvgExternalResourceMode.SECURE)) {
            if (page.contains("<svg")) {
                builder.useSVGDrawer(pictures);
            }
            builder.run();
        } catch (IOException e) {
            throw new UncheckedIOException("The page could not be made into a PDF: " + e.getMessage(), e);
        }
        return out.toByteArray();
    }

    private static String printable(String page) {
        String known = NOT_IN_XML.matcher(page).replaceAll(UNREADABLE);
        return NARROW_SPACE.matcher(known).replaceAll("\u00a0");
    }

    /** A style sheet that travels with the program. */
    public String style(String name) {
        return new String(file(name), StandardCharsets.UTF_8);
    }

    private static byte[] file(String name) {
        String path = "paper/" + name;
        try (InputStream in = Paper.class.getClassLoader().getResourceAsStream(path)) {
            if (in == null) {
                throw new IllegalStateException(path + " is missing from the program");
            }
            return in.readAllBytes();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
