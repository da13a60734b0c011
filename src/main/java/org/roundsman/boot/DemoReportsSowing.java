package org.roundsman.boot;

import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Inject;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.roundsman.demo.DemoContact;
import org.roundsman.demo.DemoCustomer;
import org.roundsman.demo.DemoFleet;
import org.roundsman.demo.DemoSite;
import org.roundsman.dispatch.BrandDraft;
import org.roundsman.dispatch.Brands;
import org.roundsman.dispatch.PlanDraft;
import org.roundsman.dispatch.ReportPlan;
import org.roundsman.dispatch.ReportPlans;
import org.roundsman.fleet.Customer;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.Customers;
import org.roundsman.reports.ReportLook.PaperSize;

/** Plans for the reports of the invented customers, and how the invented firm presents itself; once. */
@ApplicationScoped
class DemoReportsSowing {

    private static final CustomerScope ALL = CustomerScope.everyone();
    private static final int LAST = 10_000;
    private static final int HOUR = 7;
    private static final int KEPT_MONTHS = 36;
    private static final int RECIPIENTS = 2;
    private static final Set<String> GERMAN = Set.of("DE", "AT", "CH");
    /** No invented site lies where French is spoken; one customer's people read it all the same. */
    private static final int FRENCH = 2;

    private static final Set<String> LETTER = Set.of("US", "CA");

    private final ReportPlans plans;
    private final Brands brands;
    private final Customers customers;

    @Inject
    DemoReportsSowing(ReportPlans plans, Brands brands, Customers customers) {
        this.plans = plans;
        this.brands = brands;
        this.customers = customers;
    }

    void sow(@Observes @Priority(LAST) DemoSown sown) {
        if (plans.all().stream().anyMatch(ReportPlan::active)) {
            return;
        }
        Map<String, Long> ids = customers.all(ALL).stream()
                .collect(Collectors.toMap(customer -> customer.name, (Customer customer) -> customer.id));
        brands.saveFirm(new BrandDraft(
                "Fernhollow Networks",
                "#005c4b",
                Optional.of(picture("fernhollow.png")),
                false,
                List.of(DemoFleet.NOTE, "Mill Lane 4, Fernhollow", "care@fernhollow.example")));
        for (DemoCustomer customer : sown.fleet().customers()) {
            Long id = ids.get(customer.name());
            if (id != null) {
                plans.save(id, plan(customer));
                if (customer.number() == 0) {
                    brands.save(
                            id,
                            new BrandDraft(
                                    customer.name(),
                                    "#00548c",
                                    Optional.of(picture("pebblegate.png")),
                                    false,
                                    List.of()));
                }
            }
        }
    }

    /** The second customer's reports go out without being read first. */
    private static PlanDraft plan(DemoCustomer customer) {
        String country = mostOf(customer, DemoSite::country);
        String language = customer.number() == FRENCH ? "fr" : GERMAN.contains(country) ? "de" : "en";
        return new PlanDraft(
                true,
                1,
                HOUR,
                mostOf(customer, site -> site.zone().getId()),
                language,
                LETTER.contains(country) ? PaperSize.LETTER : PaperSize.A4,
                recipients(customer),
                customer.number() != 1,
                true,
                KEPT_MONTHS);
    }

    private static String mostOf(DemoCustomer customer, Function<DemoSite, String> of) {
        return customer.sites().stream()
                .collect(Collectors.groupingBy(of, java.util.TreeMap::new, Collectors.counting()))
                .entrySet()
                .stream()
                .max(Map.Entry.comparingByValue())
                .orElseThrow()
                .getKey();
    }

    private static List<String> recipients(DemoCustomer customer) {
        return customer.sites().stream()
                .flatMap(site -> site.contacts().stream())
                .map(DemoContact::email)
                .filter(email -> !email.isEmpty())
                .map(email -> email.toLowerCase(Locale.ROOT))
                .distinct()
                .limit(RECIPIENTS)
                .toList();
    }

    private static byte[] picture(String name) {
        String path = "demo/" + name;
        try (InputStream in = DemoReportsSowing.class.getClassLoader().getResourceAsStream(path)) {
            if (in == null) {
                throw new IllegalStateException(path + " is missing from the program");
            }
            return in.readAllBytes();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
