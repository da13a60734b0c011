package org.roundsman.web.warranty;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.RawString;
import io.quarkus.qute.TemplateInstance;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.time.Clock;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.List;
import org.roundsman.people.Role;
import org.roundsman.warranty.UnitCover;
import org.roundsman.warranty.Warranties;
import org.roundsman.warranty.YearAhead;
import org.roundsman.web.page.Visitor;

/** The year ahead: what runs out when, of whom, and what it costs to replace. */
@Path("/")
@RolesAllowed({Role.TECHNICIAN_ROLE, Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
class WarrantyPages {

    private static final List<String> HEADS =
            List.of("month", "units", "currency", "replacement_at_list_price", "units_without_price");

    private final Warranties warranties;
    private final Choices choices;
    private final Visitor visitor;
    private final Clock clock;

    WarrantyPages(Warranties warranties, Choices choices, Visitor visitor, Clock clock) {
        this.warranties = warranties;
        this.choices = choices;
        this.visitor = visitor;
        this.clock = clock;
    }

    /** A month, or what stands beside the year, with the address of its list. */
    record Line(String name, String address, CoverWords.Sum sum) {}

    /** The part of a customer or model. */
    record ShareLine(
            String name,
            String narrowed,
            String units,
            CoverWords.Sum ending,
            int ended,
            int missing,
            int pastSupport,
            String list) {}

    /**
     * What the page shows.
     *
     * @param download address of the same as CSV
     */
    record View(
            RawString picture,
            List<Line> months,
            List<Line> beside,
            List<ShareLine> byCustomer,
            List<ShareLine> byModel,
            List<Choices.Choice> customers,
            List<Choices.Choice> models,
            boolean narrowed,
            int units,
            String download) {}

    @CheckedTemplate(basePath = "warranty")
    static class Templates {
        private Templates() {}

        static native TemplateInstance year(View view);
    }

    @GET
    @Path("warranty")
    @Produces(MediaType.TEXT_HTML)
    public TemplateInstance year(@BeanParam UnitSearch asked) {
        List<UnitCover> units = found(asked);
        YearAhead year = year(units);
        String here = narrowed(asked).address(1);
        String list = "/warranty/units" + here;
        return Templates.year(new View(
                YearPicture.of(year.months(), list),
                year.months().stream().map(one -> month(one, list)).toList(),
                beside(year, list),
                shares(year.customers(), asked, true),
                shares(year.models(), asked, false),
                choices.customers(asked.customer()),
                choices.models(asked.model()),
                !here.isEmpty(),
                units.size(),
                "/warranty/year.csv" + here));
    }

    /** The months with their cost, one row for each currency. */
    @GET
    @Path("warranty/year.csv")
    @Produces("text/csv")
    public Response download(@BeanParam UnitSearch asked) {
        List<List<String>> rows = new ArrayList<>();
        for (YearAhead.Month month : year(found(asked)).months()) {
            String units = String.valueOf(month.cost().units());
            String unpriced = String.valueOf(month.cost().unpriced());
            month.cost()
                    .sums()
                    .forEach((currency, sum) -> rows.add(
                            List.of(month.month().toString(), units, currency, sum.toPlainString(), unpriced)));
            if (month.cost().sums().isEmpty()) {
                rows.add(List.of(month.month().toString(), units, "", "", unpriced));
            }
        }
        return Sheet.of("warranty-year", HEADS, rows);
    }

    private List<UnitCover> found(UnitSearch asked) {
        return narrowed(asked).search().of(warranties.all(visitor.scope()));
    }

    /** The year is narrowed to a customer and a model, and to nothing else. */
    private static UnitSearch narrowed(UnitSearch asked) {
        return new UnitSearch(asked.customer(), "", asked.model(), "", "", "", "", "");
    }

    private YearAhead year(List<UnitCover> units) {
        YearMonth first = YearAhead.first(units, LocalDate.now(clock));
        return YearAhead.of(units, first);
    }

    private static Line month(YearAhead.Month month, String list) {
        return new Line(
                CoverWords.month(month.month()),
                list + join(list) + "month=" + month.month(),
                CoverWords.Sum.of(month.cost()));
    }

    private static List<Line> beside(YearAhead year, String list) {
        String more = list + join(list);
        return List.of(
                new Line("Ended", more + "status=ENDED", CoverWords.Sum.of(year.ended())),
                new Line("Terms or date missing", more + "status=MISSING", CoverWords.Sum.of(year.missing())),
                new Line("Ends later", "", CoverWords.Sum.of(year.later())),
                new Line("No end", "", CoverWords.Sum.of(year.open())),
                new Line("Past the maker’s support", more + "support=past", CoverWords.Sum.of(year.pastSupport())));
    }

    private static String join(String list) {
        return list.contains("?") ? "&" : "?";
    }

    private static List<ShareLine> shares(List<YearAhead.Share> shares, UnitSearch asked, boolean customers) {
        return shares.stream()
                .map(one -> {
                    String id = String.valueOf(one.id());
                    UnitSearch to = new UnitSearch(
                            customers ? id : asked.customer(), "", customers ? asked.model() : id, "", "", "", "", "");
                    return new ShareLine(
                            one.name().isEmpty() ? "No model known" : one.name(),
                            "/warranty" + to.address(1),
                            org.roundsman.web.page.Words.count(one.units()),
                            CoverWords.Sum.of(one.ending()),
                            one.ended(),
                            one.missing(),
                            one.pastSupport(),
                            "/warranty/units" + to.address(1));
                })
                .toList();
    }
}
