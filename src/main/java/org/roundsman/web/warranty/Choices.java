package org.roundsman.web.warranty;

import jakarta.enterprise.context.RequestScoped;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.roundsman.fleet.Customers;
import org.roundsman.fleet.Models;
import org.roundsman.fleet.Sites;
import org.roundsman.warranty.CoverStatus;
import org.roundsman.warranty.YearAhead;
import org.roundsman.web.page.Visitor;

/** What lists and forms of warranty offer to choose from. */
@RequestScoped
class Choices {

    private final Customers customers;
    private final Sites sites;
    private final Models models;
    private final Visitor visitor;

    Choices(Customers customers, Sites sites, Models models, Visitor visitor) {
        this.customers = customers;
        this.sites = sites;
        this.models = models;
        this.visitor = visitor;
    }

    /** Something to choose. */
    record Choice(String value, String name, boolean chosen) {}

    List<Choice> customers(String chosen) {
        return customers.all(visitor.scope()).stream()
                .map(one -> new Choice(
                        one.id.toString(), one.name, one.id.toString().equals(chosen)))
                .toList();
    }

    List<Choice> sites(long customerId, String chosen) {
        return sites.all(visitor.scope(), customerId).stream()
                .map(one -> new Choice(
                        one.id.toString(), one.name, one.id.toString().equals(chosen)))
                .toList();
    }

    List<Choice> models(String chosen) {
        return models.all().stream()
                .map(one -> new Choice(
                        one.id.toString(),
                        one.maker + " " + one.name,
                        one.id.toString().equals(chosen)))
                .toList();
    }

    static List<Choice> statuses(String chosen) {
        List<Choice> all = new ArrayList<>();
        all.add(new Choice(UnitSearch.ENDING, "ends within 180 days, all", chosen.equals(UnitSearch.ENDING)));
        Arrays.stream(CoverStatus.values())
                .forEach(one ->
                        all.add(new Choice(one.name(), one.word(), one.name().equals(chosen))));
        return all;
    }

    static List<Choice> months(YearMonth first, String chosen) {
        List<Choice> all = new ArrayList<>();
        for (int i = 0; i < YearAhead.MONTHS; i++) {
            YearMonth month = first.plusMonths(i);
            all.add(new Choice(
                    month.toString(), CoverWords.month(month), month.toString().equals(chosen)));
        }
        return all;
    }
}
