package org.roundsman.web.planned;

import jakarta.enterprise.context.RequestScoped;
import jakarta.inject.Named;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.OptionalLong;
import org.roundsman.fleet.Sites;
import org.roundsman.planned.PlannedWork;
import org.roundsman.planned.Reach;
import org.roundsman.planned.Running;
import org.roundsman.planned.Stretch;
import org.roundsman.web.page.Visitor;

/** What pages of sites and devices show about planned work; templates know it as {@code inject:planned}. */
@Named("planned")
@RequestScoped
public class WorkHere {

    private final Sites sites;
    private final PlannedWork work;
    private final Visitor visitor;
    private final Clock clock;

    WorkHere(Sites sites, PlannedWork work, Visitor visitor, Clock clock) {
        this.sites = sites;
        this.work = work;
        this.visitor = visitor;
        this.clock = clock;
    }

    /**
     * Work that goes on.
     *
     * @param until when it ends, by the clock of the site
     * @param where what is worked on
     * @param own whether it is planned for this very thing, and not for more
     */
    public record Going(long id, String title, String until, String left, String where, boolean own) {}

    /**
     * What is planned for a site or a device.
     *
     * @param of the address of its page
     * @param back the same for forms
     * @param next the next work on the site, or empty
     */
    public record Here(long siteId, String of, String back, String zone, List<Going> going, String next) {}

    /** Of a site as a whole. */
    public Here site(long siteId) {
        return here(siteId, OptionalLong.empty(), "/sites/" + siteId, "site-" + siteId);
    }

    /** Of a device at that site. */
    public Here device(long siteId, long deviceId) {
        return here(siteId, OptionalLong.of(deviceId), "/devices/" + deviceId, "device-" + deviceId);
    }

    private Here here(long siteId, OptionalLong device, String of, String back) {
        Instant now = clock.instant();
        return sites.find(visitor.scope(), siteId)
                .map(site -> {
                    ZoneId zone = site.zone();
                    List<Going> going = work.running(siteId, device, now).stream()
                            .map(one -> going(one, device.isPresent() ? Reach.DEVICE : Reach.SITE, now, zone))
                            .toList();
                    String next = work.next(siteId, now)
                            .map(one -> one.title() + ", " + WorkWords.stretch(new Stretch(one.from(), one.to()), zone))
                            .orElse("");
                    return new Here(siteId, of, back, zone.getId(), going, next);
                })
                .orElseGet(() -> new Here(siteId, of, back, "", List.of(), ""));
    }

    private static Going going(Running one, Reach reach, Instant now, ZoneId zone) {
        return new Going(
                one.windowId(),
                one.title(),
                WorkWords.end(one.to(), now, zone),
                WorkWords.left(one.to(), now),
                one.where(),
                one.reach() == reach);
    }
}
