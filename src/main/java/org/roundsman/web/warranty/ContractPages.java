package org.roundsman.web.warranty;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.annotation.security.RolesAllowed;
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
import org.jboss.resteasy.reactive.RestQuery;
import org.roundsman.people.Role;
import org.roundsman.shared.Page;
import org.roundsman.warranty.Contract;
import org.roundsman.warranty.Contracts;
import org.roundsman.web.page.Visitor;

/** Extended contracts: all of them, and one with its units. */
@Path("/")
@RolesAllowed({Role.TECHNICIAN_ROLE, Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
class ContractPages {

    private static final int A_PAGE = 50;

    private final Contracts contracts;
    private final ContractViews views;
    private final Visitor visitor;
    private final Clock clock;

    ContractPages(Contracts contracts, ContractViews views, Visitor visitor, Clock clock) {
        this.contracts = contracts;
        this.views = views;
        this.visitor = visitor;
        this.clock = clock;
    }

    @CheckedTemplate(basePath = "warranty")
    static class Templates {
        private Templates() {}

        static native TemplateInstance contracts(Page<ContractLine> page);

        static native TemplateInstance contract(ContractViews.View view);
    }

    @GET
    @Path("warranty/contracts")
    @Produces(MediaType.TEXT_HTML)
    public TemplateInstance all(@RestQuery String page) {
        List<ContractLine> lines = lines();
        int last = new Page<>(List.of(), 1, A_PAGE, lines.size()).last();
        int number = Math.min(Asked.page(page), last);
        return Templates.contracts(new Page<>(
                lines.stream().skip((long) (number - 1) * A_PAGE).limit(A_PAGE).toList(),
                number,
                A_PAGE,
                lines.size()));
    }

    @GET
    @Path("warranty/contracts.csv")
    @Produces("text/csv")
    public Response download() {
        return Sheet.of(
                "warranty-contracts",
                ContractLine.HEADS,
                lines().stream().map(ContractLine::row).toList());
    }

    private List<ContractLine> lines() {
        LocalDate today = LocalDate.now(clock);
        return contracts.all(visitor.scope()).stream()
                .map(one -> ContractLine.of(one, today))
                .toList();
    }

    @GET
    @Path("warranty/contracts/{contract}")
    @Produces(MediaType.TEXT_HTML)
    public TemplateInstance one(@RestPath long contract, @RestQuery String page) {
        Contract one = contracts.find(visitor.scope(), contract).orElseThrow(NotFoundException::new);
        return Templates.contract(views.of(one, Asked.page(page), ContractViews.Told.NOTHING));
    }
}
