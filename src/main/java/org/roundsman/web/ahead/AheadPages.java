package org.roundsman.web.ahead;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.RawString;
import io.quarkus.qute.TemplateInstance;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import org.roundsman.people.Role;
import org.roundsman.warranty.UnitCover;
import org.roundsman.warranty.Warranties;
import org.roundsman.warranty.YearAhead;
import org.roundsman.web.page.Visitor;
import org.roundsman.web.page.Words;
import org.roundsman.web.warranty.CoverWords;
import org.roundsman.web.warranty.YearPicture;

/** Where an owner begins: what has to be decided now, and what the next twelve months bring. */
@Path("/ahead")
@RolesAllowed({Role.TECHNICIAN_ROLE, Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
class AheadPages {

    private final Warranties warranties;
    private final Decisions decisions;
    private final Dates dates;
    private final Visitor visitor;
    private final Clock clock;

    AheadPages(Warranties warranties, Decisions decisions, Dates dates, Visitor visitor, Clock clock) {
        this.warranties = warranties;
        this.decisions = decisions;
        this.dates = dates;
        this.visitor = visitor;
        this.clock = clock;
    }

    /**
     * What the page shows.
     *
     * @param units how many there are at all
     * @param ending in words, such as {@code 143 units}
     * @param cost of replacing those, one text a currency
     * @param costliest the parts of customers, the most first
     */
    record View(
            int units,
            String ending,
            CoverWords.Sum cost,
            RawString picture,
            List<Decisions.Line> decisions,
            List<DateLine> dates,
            List<Part> costliest) {}

    /** What ends at one customer within the year. */
    record Part(String customer, String link, CoverWords.Sum sum) {}

    @CheckedTemplate(basePath = "ahead")
    static class Templates {
        private Templates() {}

        static native TemplateInstance ahead(View view);
    }

    @GET
    @Produces(MediaType.TEXT_HTML)
    public TemplateInstance ahead() {
        List<UnitCover> units = warranties.all(visitor.scope());
        YearAhead year = YearAhead.of(units, YearAhead.first(units, LocalDate.now(clock)));
        return Templates.ahead(new View(
                units.size(),
                Words.many(year.ending().units(), "unit", "units"),
                CoverWords.Sum.of(year.ending()),
                YearPicture.of(year.months(), "/warranty/units"),
                decisions.now(units),
                dates.from(LocalDate.now(clock), units),
                parts(year)));
    }

    private static List<Part> parts(YearAhead year) {
        return year.customers().stream()
                .filter(share -> share.ending().units() > 0)
                .sorted((a, b) -> b.ending().units() - a.ending().units())
                .map(share ->
                        new Part(share.name(), "/warranty?customer=" + share.id(), CoverWords.Sum.of(share.ending())))
                .toList();
    }
}
