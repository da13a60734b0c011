package org.roundsman.web.page;

import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.RequestScoped;
import jakarta.inject.Named;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.roundsman.people.Role;
import org.roundsman.people.SignedIn;

/** What the layout around every page shows; templates know it as {@code inject:frame}. */
@Named("frame")
@RequestScoped
public class Frame {

    private final Visitor visitor;
    private final Assets assets;
    private final RoutingContext context;
    private final boolean invented;

    Frame(
            Visitor visitor,
            Assets assets,
            RoutingContext context,
            @ConfigProperty(name = "roundsman.demo.enabled", defaultValue = "false") boolean invented) {
        this.visitor = visitor;
        this.assets = assets;
        this.context = context;
        this.invented = invented;
    }

    public boolean signedIn() {
        return visitor.signedIn() && !visitor.person().mustChange();
    }

    public SignedIn person() {
        return visitor.person();
    }

    public boolean edits() {
        return signedIn() && person().role().editsFleet();
    }

    /** Whether this person deals with alarms. */
    public boolean acts() {
        return signedIn() && person().role().actsOnAlarms();
    }

    public boolean owns() {
        return signedIn() && person().role() == Role.OWNER;
    }

    /** Whether all data on the pages is invented. */
    public boolean invented() {
        return invented;
    }

    /** Marks the area of the site that the page belongs to. */
    public boolean in(String area) {
        String path = context.normalizedPath();
        return area.equals("/") ? isFleet(path) : path.equals(area) || path.startsWith(area + "/");
    }

    private static boolean isFleet(String path) {
        return path.equals("/") || path.startsWith("/sites") || path.startsWith("/devices");
    }

    /** Changes with the files that the layout loads, so that browsers may keep them for long. */
    public String version() {
        return assets.version();
    }
}
