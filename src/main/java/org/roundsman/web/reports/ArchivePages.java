package org.roundsman.web.reports;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.time.Clock;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jboss.resteasy.reactive.RestQuery;
import org.roundsman.dispatch.ReportShelf;
import org.roundsman.dispatch.ShelfSearch;
import org.roundsman.fleet.Customers;
import org.roundsman.people.Role;
import org.roundsman.shared.Page;
import org.roundsman.web.page.Visitor;
import org.roundsman.web.page.Words;

/** Every report that is kept, and finding one. */
@Path("/")
@Produces(MediaType.TEXT_HTML)
@RolesAllowed({Role.TECHNICIAN_ROLE, Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
class ArchivePages {

    private static final int A_PAGE = 50;

    private final ReportShelf shelf;
    private final ShelfLines lines;
    private final Customers customers;
    private final Visitor visitor;
    private final Clock clock;

    ArchivePages(ReportShelf shelf, ShelfLines lines, Customers customers, Visitor visitor, Clock clock) {
        this.shelf = shelf;
        this.lines = lines;
        this.customers = customers;
        this.visitor = visitor;
        this.clock = clock;
    }

    /** What the address asks for, as text. */
    record Search(
            @RestQuery String customer,
            @RestQuery String month,
            @RestQuery String state,
            @RestQuery String page) {

        Search {
            customer = Asked.text(customer);
            month = Asked.text(month);
            state = Asked.text(state);
            page = Asked.text(page);
        }

        ShelfSearch wanted() {
            return new ShelfSearch(Asked.number(customer), Asked.month(month), StateWord.find(state));
        }

        /** Address of that page of the same list. */
        String address(int number) {
            Map<String, String> parts = new LinkedHashMap<>();
            parts.put("customer", customer);
            parts.put("month", month);
            parts.put("state", state);
            parts.put("page", number > 1 ? String.valueOf(number) : "");
            return "/reports/archive" + Asked.address(parts);
        }
    }

    /** What the page shows, with what there is to choose. */
    record View(
            Page<ShelfLine> page,
            Search search,
            List<Choice> customers,
            List<Choice> months,
            List<Choice> states,
            boolean sends) {

        public String count() {
            return Words.many(page.total(), "report", "reports");
        }

        public boolean narrowed() {
            return !search.address(1).equals("/reports/archive");
        }

        public String previous() {
            return search.address(page.number() - 1);
        }

        public String next() {
            return search.address(page.number() + 1);
        }
    }

    @CheckedTemplate(basePath = "reports")
    static class Templates {
        private Templates() {}

        static native TemplateInstance archive(View view);
    }

    @GET
    @Path("reports/archive")
    public TemplateInstance archive(@BeanParam Search search) {
        int number = Asked.page(search.page());
        Page<ShelfLine> page = lines.of(shelf.search(visitor.scope(), search.wanted(), number, A_PAGE));
        return Templates.archive(new View(
                page,
                search,
                Choice.customers(customers.all(visitor.scope()), search.customer()),
                Choice.months(YearMonth.from(LocalDate.now(clock)), search.month()),
                Choice.states(search.state()),
                visitor.person().role().sendsReports()));
    }
}
