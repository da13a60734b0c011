package org.roundsman.web.warranty;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import org.jboss.resteasy.reactive.RestPath;
import org.roundsman.people.Role;
import org.roundsman.shared.Page;
import org.roundsman.warranty.UnitCover;
import org.roundsman.warranty.Warranties;
import org.roundsman.warranty.YearAhead;
import org.roundsman.web.page.Faults;
import org.roundsman.web.page.Visitor;

/** Lists of units, and the page of one. */
@Path("/")
@RolesAllowed({Role.TECHNICIAN_ROLE, Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
class UnitPages {

    private static final int A_PAGE = 50;

    private final Warranties warranties;
    private final UnitViews views;
    private final Choices choices;
    private final Visitor visitor;
    private final Clock clock;

    UnitPages(Warranties warranties, UnitViews views, Choices choices, Visitor visitor, Clock clock) {
        this.warranties = warranties;
        this.views = views;
        this.choices = choices;
        this.visitor = visitor;
        this.clock = clock;
    }

    /**
     * What the list shows.
     *
     * @param cost of all that was found, not only of this page
     */
    record Lists(
            UnitSearch search,
            Page<UnitLine> page,
            CoverWords.Sum cost,
            List<Choices.Choice> customers,
            List<Choices.Choice> models,
            List<Choices.Choice> months,
            List<Choices.Choice> statuses,
            String download) {

        public String address(int number) {
            return "/warranty/units" + search.address(number);
        }
    }

    @CheckedTemplate(basePath = "warranty")
    static class Templates {
        private Templates() {}

        static native TemplateInstance units(Lists lists);

        static native TemplateInstance unit(UnitView view, Faults faults);
    }

    @GET
    @Path("warranty/units")
    @Produces(MediaType.TEXT_HTML)
    public TemplateInstance units(@BeanParam UnitSearch search) {
        List<UnitCover> all = warranties.all(visitor.scope());
        List<UnitCover> found = search.search().of(all);
        int last = new Page<>(List.of(), 1, A_PAGE, found.size()).last();
        int number = Math.min(search.number(), last);
        List<UnitLine> lines = found.stream()
                .skip((long) (number - 1) * A_PAGE)
                .limit(A_PAGE)
                .map(UnitLine::of)
                .toList();
        return Templates.units(new Lists(
                search,
                new Page<>(lines, number, A_PAGE, found.size()),
                CoverWords.Sum.of(org.roundsman.warranty.Cost.of(found)),
                choices.customers(search.customer()),
                choices.models(search.model()),
                Choices.months(YearAhead.first(all, LocalDate.now(clock)), search.month()),
                Choices.statuses(search.status()),
                "/warranty/units.csv" + search.address(1)));
    }

    /** Everything that the search finds, not only a page of it. */
    @GET
    @Path("warranty/units.csv")
    @Produces("text/csv")
    public Response download(@BeanParam UnitSearch search) {
        List<List<String>> rows = search.search().of(warranties.all(visitor.scope())).stream()
                .map(UnitLine::row)
                .toList();
        return Sheet.of("warranty-units", UnitLine.HEADS, rows);
    }

    @GET
    @Path("warranty/units/devices/{device}")
    @Produces(MediaType.TEXT_HTML)
    public TemplateInstance device(@RestPath long device) {
        UnitCover cover = warranties.ofDevice(visitor.scope(), device).orElseThrow(NotFoundException::new);
        return Templates.unit(views.of(cover), Faults.NONE);
    }

    @GET
    @Path("warranty/units/purchases/{purchase}")
    @Produces(MediaType.TEXT_HTML)
    public TemplateInstance purchase(@RestPath long purchase) {
        UnitCover cover = warranties.ofPurchase(visitor.scope(), purchase).orElseThrow(NotFoundException::new);
        return Templates.unit(views.of(cover), Faults.NONE);
    }
}
