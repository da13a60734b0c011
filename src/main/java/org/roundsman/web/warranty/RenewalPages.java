package org.roundsman.web.warranty;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.math.BigDecimal;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jboss.resteasy.reactive.RestQuery;
import org.roundsman.paper.Paper;
import org.roundsman.people.Role;
import org.roundsman.warranty.CoverSearch;
import org.roundsman.warranty.Renewals;
import org.roundsman.warranty.Unit;
import org.roundsman.warranty.UnitCover;
import org.roundsman.warranty.UnitModel;
import org.roundsman.warranty.Warranties;
import org.roundsman.web.page.Visitor;

/** The renewal list: what of whom runs out in a period, as the basis of a quote. */
@Path("/")
@RolesAllowed({Role.TECHNICIAN_ROLE, Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
class RenewalPages {

    private static final int USUAL_MONTHS = 6;

    /** So many units a paper takes: it is laid out in memory as a whole. */
    private static final int MOST_ON_PAPER = 2000;

    private static final List<String> HEADS =
            List.of("customer", "site", "device", "serial", "model", "last_day", "status", "list_price", "currency");

    private final Warranties warranties;
    private final Choices choices;
    private final Paper paper;
    private final Visitor visitor;
    private final Clock clock;

    RenewalPages(Warranties warranties, Choices choices, Paper paper, Visitor visitor, Clock clock) {
        this.warranties = warranties;
        this.choices = choices;
        this.paper = paper;
        this.visitor = visitor;
        this.clock = clock;
    }

    /** What the address asks for; six months from today where it says nothing. */
    record Period(
            @RestQuery String customer,
            @RestQuery String from,
            @RestQuery String to) {

        Period {
            customer = Asked.text(customer);
            from = Asked.text(from);
            to = Asked.text(to);
        }

        Period filled(LocalDate today) {
            LocalDate first = Asked.day(from).orElse(today);
            LocalDate last = Asked.day(to).filter(day -> !day.isBefore(first)).orElse(first.plusMonths(USUAL_MONTHS));
            return new Period(customer, first.toString(), last.toString());
        }

        String address() {
            Map<String, String> parts = new LinkedHashMap<>();
            parts.put("customer", customer);
            parts.put("from", from);
            parts.put("to", to);
            return Asked.address(parts);
        }
    }

    /** One customer's part. */
    record Part(String customer, List<UnitLine> lines, CoverWords.Sum sum) {}

    /**
     * What page and paper show.
     *
     * @param customers to choose from
     */
    record View(Period period, List<Part> parts, CoverWords.Sum total, String made, List<Choices.Choice> customers) {

        public boolean fitsPaper() {
            return total.units() <= MOST_ON_PAPER;
        }

        public String csv() {
            return "/warranty/renewals.csv" + period.address();
        }

        public String pdf() {
            return "/warranty/renewals.pdf" + period.address();
        }
    }

    @CheckedTemplate(basePath = "warranty")
    static class Templates {
        private Templates() {}

        static native TemplateInstance renewals(View view);

        static native TemplateInstance renewalsPaper(View view, String style);
    }

    @GET
    @Path("warranty/renewals")
    @Produces(MediaType.TEXT_HTML)
    public TemplateInstance page(@BeanParam Period asked) {
        return Templates.renewals(view(asked.filled(today())));
    }

    @GET
    @Path("warranty/renewals.pdf")
    @Produces("application/pdf")
    public Response pdf(@BeanParam Period asked) {
        View view = view(asked.filled(today()));
        if (!view.fitsPaper()) {
            return Response.status(422)
                    .type(MediaType.TEXT_HTML_TYPE.withCharset("UTF-8"))
                    .entity(Templates.renewals(view).render())
                    .build();
        }
        byte[] pdf = paper.pdf(
                Templates.renewalsPaper(view, paper.style("renewals.css")).render());
        return Response.ok(pdf)
                .header("Content-Disposition", "attachment; filename=\"renewals-" + view.made() + ".pdf\"")
                .build();
    }

    @GET
    @Path("warranty/renewals.csv")
    @Produces("text/csv")
    public Response download(@BeanParam Period asked) {
        List<List<String>> rows = new ArrayList<>();
        for (Renewals.OfCustomer one : renewals(asked.filled(today())).customers()) {
            one.units().forEach(unit -> rows.add(row(unit)));
        }
        return Sheet.of("renewals", HEADS, rows);
    }

    private static List<String> row(UnitCover cover) {
        Unit unit = cover.unit();
        return List.of(
                unit.customer(),
                unit.site(),
                unit.name(),
                unit.serial(),
                unit.modelLabel(),
                cover.lastDay().map(LocalDate::toString).orElse(""),
                cover.status().word(),
                unit.model()
                        .flatMap(UnitModel::listPrice)
                        .map(BigDecimal::toPlainString)
                        .orElse(""),
                unit.model().map(UnitModel::currency).orElse(""));
    }

    private View view(Period period) {
        Renewals found = renewals(period);
        List<Part> parts = found.customers().stream()
                .map(one -> new Part(
                        one.name(), one.units().stream().map(UnitLine::of).toList(), CoverWords.Sum.of(one.cost())))
                .toList();
        return new View(
                period,
                parts,
                CoverWords.Sum.of(found.total()),
                today().toString(),
                choices.customers(period.customer()));
    }

    private Renewals renewals(Period period) {
        UnitSearch of = new UnitSearch(period.customer(), "", "", "", "", "", "", "");
        CoverSearch search = of.search();
        return Renewals.of(
                search.of(warranties.all(visitor.scope())),
                LocalDate.parse(period.from()),
                LocalDate.parse(period.to()));
    }

    private LocalDate today() {
        return LocalDate.now(clock);
    }
}
