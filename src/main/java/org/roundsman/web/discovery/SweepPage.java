package org.roundsman.web.discovery;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import org.roundsman.discovery.Aside;
import org.roundsman.discovery.Review;
import org.roundsman.discovery.Reviews;
import org.roundsman.discovery.SweepReview;
import org.roundsman.discovery.Sweeps;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.Site;
import org.roundsman.web.page.Faults;

/** Asks for what the page of a site's sweeps shows. */
@ApplicationScoped
class SweepPage {

    private final Sweeps sweeps;
    private final Reviews reviews;
    private final Clock clock;

    SweepPage(Sweeps sweeps, Reviews reviews, Clock clock) {
        this.sweeps = sweeps;
        this.reviews = reviews;
        this.clock = clock;
    }

    /** Credentials to choose. */
    record Choice(long id, String text, boolean chosen) {}

    /** What does not change while a sweep runs. */
    record Plan(
            long siteId,
            String site,
            long customerId,
            String customer,
            PlanForm form,
            CountView count,
            List<Choice> credentials,
            boolean first,
            Faults faults) {}

    /** What does: null where there was no sweep, or while it still runs. */
    record Result(long siteId, ProgressView progress, ListView list, List<Aside> asides, String said) {}

    Plan plan(CustomerScope scope, Site site, PlanForm entered, Faults faults) {
        PlanForm form = entered == null ? PlanForm.of(sweeps.plan(scope, site.id)) : entered;
        List<Choice> choices = sweeps.credentials(scope, site.id).stream()
                .map(c -> new Choice(c.id, c.name + " (" + c.summary() + ")", form.isAll() || form.chose(c.id)))
                .toList();
        return new Plan(
                site.id,
                site.name,
                site.customer.id,
                site.customer.name,
                form,
                CountView.of(form.ranges(), form.ports()),
                choices,
                sweeps.latest(scope, site.id, 1).isEmpty(),
                faults);
    }

    Result result(CustomerScope scope, Site site, List<Review> entered, Faults faults, String said) {
        Optional<ProgressView> progress =
                sweeps.progress(scope, site.id).map(p -> ProgressView.of(p, site.zone(), clock));
        Optional<SweepReview> review = progress.filter(p -> !p.running()).flatMap(p -> reviews.latest(scope, site.id));
        return new Result(
                site.id,
                progress.orElse(null),
                review.map(r -> ListView.of(r, entered, faults)).orElse(null),
                sweeps.asides(scope, site.id),
                said);
    }
}
