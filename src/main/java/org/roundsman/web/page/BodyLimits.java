package org.roundsman.web.page;

import io.quarkus.vertx.http.runtime.filters.Filters;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.event.Observes;
import java.util.Set;
import java.util.regex.Pattern;
import org.roundsman.people.ApiAddress;

/**
 * Forms are small: a body is taken up to 256 KiB. Only where files are uploaded it is up to 32 MiB, and up to 5 MiB where one
 * proves a purchase, and a little more than usual where one is the logo of reports.
 */
public final class BodyLimits {

    /** Octets that an address takes unless files are uploaded there. */
    public static final long USUAL = 256 * 1024;

    /** 32 MiB of files and a little for the form around them; quarkus.http.limits.max-body-size says the same. */
    static final long UPLOAD = 33 * 1024 * 1024;

    private static final Set<String> UPLOADS = Set.of("/onboarding/imports", "/profiles/walks", "/api/v1/imports");

    /** 5 MiB of a file and a little for the form around it. */
    static final long EVIDENCE = 5 * 1024 * 1024 + 64 * 1024;

    private static final Pattern EVIDENCES = Pattern.compile("/warranty/units/purchases/[0-9]{1,18}/evidence");

    /** 256 KiB of a logo and a little for the form around it. */
    static final long LOGO = USUAL + 64 * 1024;

    private static final Pattern LOGOS = Pattern.compile("/reports/look(/[0-9]{1,18})?");

    private static final int TOO_LARGE = 413;

    /** After the headers of safety, and before anybody reads. */
    private static final int EARLY = 450;

    /** After the container has put its own limit (at route order -2), which is for uploads. */
    private static final int AFTER_THE_CONTAINER = 1;

    /** Where the container keeps how much it reads of a body that does not say its length. */
    private static final String MOST = "io.quarkus.max-request-size";

    void register(@Observes Filters filters) {
        filters.register(BodyLimits::announced, EARLY);
        filters.register(BodyLimits::unannounced, AFTER_THE_CONTAINER);
    }

    /** Octets that the address of a request takes. */
    public static long limit(RoutingContext context) {
        if (EVIDENCES.matcher(context.normalizedPath()).matches()) {
            return EVIDENCE;
        }
        if (LOGOS.matcher(context.normalizedPath()).matches()) {
            return LOGO;
        }
        return UPLOADS.contains(context.normalizedPath()) ? UPLOAD : USUAL;
    }

    /** Refuses a body by the length that its head tells. The API says the same in a form of its own. */
    private static void announced(RoutingContext context) {
        String length = context.request().getHeader("Content-Length");
        if (length == null || ApiAddress.is(context) || fits(length, limit(context))) {
            context.next();
            return;
        }
        context.response()
                .setStatusCode(TOO_LARGE)
                .putHeader("Connection", "close")
                .putHeader("Content-Type", "text/plain;charset=utf-8")
                .end(words(limit(context)));
    }

    /** What is no number is refused by the HTTP parser. */
    private static boolean fits(String length, long limit) {
        try {
            return Long.parseLong(length.strip()) <= limit;
        } catch (NumberFormatException e) {
            return true;
        }
    }

    /** A body in chunks does not tell its length: the reader stops there, and answers by a status line alone. */
    private static void unannounced(RoutingContext context) {
        if (context.request().getHeader("Content-Length") == null) {
            long limit = limit(context);
            context.put(MOST, limit);
            context.addHeadersEndHandler(nothing -> say(context, limit));
        }
        context.next();
    }

    private static void say(RoutingContext context, long limit) {
        if (context.response().getStatusCode() == TOO_LARGE) {
            context.response().setStatusMessage("Larger than " + size(limit) + ", which is the most here");
        }
    }

    private static String size(long limit) {
        return limit == UPLOAD ? "32 MB" : limit == EVIDENCE ? "5 MB" : "256 KB";
    }

    static String words(long limit) {
        if (limit == EVIDENCE) {
            return "This file is larger than 5 MB, the most that is taken as evidence. Nothing was kept. Go back and choose a"
                    + " smaller one.";
        }
        if (limit == LOGO) {
            return "This logo is larger than 256 KB, the most that is taken. Nothing was kept. Go back and choose a smaller one.";
        }
        return limit == UPLOAD
                ? "These files are larger than 32 MB together, more than one upload takes. Nothing was read. Go back"
                        + " and send an import in parts: customers first, then sites, devices, and purchases last; of a"
                        + " walk, less than everything."
                : "This request is larger than 256 KB, more than this address takes. Nothing was changed.";
    }
}
