package org.roundsman.web.changes;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.StreamingOutput;
import java.io.BufferedWriter;
import java.io.OutputStreamWriter;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.roundsman.audit.AuditEntry;
import org.roundsman.audit.AuditLog;
import org.roundsman.fleet.Customers;
import org.roundsman.people.Role;
import org.roundsman.web.page.Visitor;

/** Who changed what, when and from where. */
@Path("/")
@RolesAllowed({Role.TECHNICIAN_ROLE, Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
class ChangePages {

    private static final int A_PAGE = 50;

    private final AuditLog log;
    private final Customers customers;
    private final Visitor visitor;

    ChangePages(AuditLog log, Customers customers, Visitor visitor) {
        this.log = log;
        this.customers = customers;
        this.visitor = visitor;
    }

    /** A customer to choose. */
    record Choice(String value, String name) {}

    /**
     * What the page shows.
     *
     * @param download address of the same as CSV
     * @param older address of the next page, or empty
     * @param newest address of the first page, or empty when this is it
     */
    record Found(
            ChangeSearch search,
            AuditLog.Choices choices,
            List<Choice> customers,
            List<ChangeLine> lines,
            String download,
            String older,
            String newest) {

        public boolean narrowed() {
            return search.narrowed();
        }
    }

    @CheckedTemplate(basePath = "changes")
    static class Templates {
        private Templates() {}

        static native TemplateInstance changes(Found found);
    }

    @GET
    @Path("changes")
    @Produces(MediaType.TEXT_HTML)
    public TemplateInstance changes(@BeanParam ChangeSearch search) {
        List<AuditEntry> entries = log.find(search.query(), search.place(), A_PAGE + 1);
        List<AuditEntry> shown = entries.subList(0, Math.min(A_PAGE, entries.size()));
        Map<Long, String> names = customerNames();
        String older = entries.size() <= A_PAGE
                ? ""
                : "/changes" + search.address(ChangeSearch.text(AuditLog.Place.of(shown.get(shown.size() - 1))));
        return Templates.changes(new Found(
                search,
                log.choices(),
                names.entrySet().stream()
                        .map(one -> new Choice(one.getKey().toString(), one.getValue()))
                        .toList(),
                shown.stream().map(entry -> line(entry, names)).toList(),
                "/changes.csv" + search.address(""),
                older,
                search.before().isEmpty() ? "" : "/changes" + search.address("")));
    }

    /** Everything that the search finds, not only a page of it. */
    @GET
    @Path("changes.csv")
    @Produces("text/csv")
    public Response download(@BeanParam ChangeSearch search) {
        Map<Long, String> names = customerNames();
        StreamingOutput rows = out -> {
            ChangesCsv csv =
                    new ChangesCsv(new BufferedWriter(new OutputStreamWriter(out, StandardCharsets.UTF_8)), names);
            log.each(search.query(), csv::add);
            csv.end();
        };
        return Response.ok(rows)
                .type("text/csv; charset=utf-8")
                .header(HttpHeaders.CONTENT_DISPOSITION, "attachment; filename=\"changes.csv\"")
                .build();
    }

    private static ChangeLine line(AuditEntry entry, Map<Long, String> names) {
        Long customer = entry.subject().customerId();
        return ChangeLine.of(entry, customer == null ? "" : names.getOrDefault(customer, ""));
    }

    /** By id, in order of their names. */
    private Map<Long, String> customerNames() {
        Map<Long, String> names = new LinkedHashMap<>();
        customers.all(visitor.scope()).forEach(customer -> names.put(customer.id, customer.name));
        return names;
    }
}
