package org.roundsman.web.ahead;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.roundsman.catalogue.Catalogue;
import org.roundsman.firmware.FirmwarePolicies;
import org.roundsman.fleet.CustomerScope;
import org.roundsman.fleet.Model;
import org.roundsman.warranty.Contracts;
import org.roundsman.warranty.Cost;
import org.roundsman.warranty.UnitCover;
import org.roundsman.web.page.Words;
import org.roundsman.web.warranty.CoverWords;

/** The announced and agreed days of the next twelve months: ends of models that are in use, contracts, exceptions. */
@ApplicationScoped
class Dates {

    private final Catalogue catalogue;
    private final Contracts contracts;
    private final FirmwarePolicies policies;

    Dates(Catalogue catalogue, Contracts contracts, FirmwarePolicies policies) {
        this.catalogue = catalogue;
        this.contracts = contracts;
        this.policies = policies;
    }

    /** By day, from that day on. */
    List<DateLine> from(LocalDate today, List<UnitCover> units) {
        LocalDate last = today.plusMonths(12);
        List<DateLine> lines = new ArrayList<>();
        models(units, lines);
        contracts(lines);
        exceptions(lines);
        return lines.stream()
                .filter(line -> !line.day().isBefore(today) && !line.day().isAfter(last))
                .sorted(DateLine.BY_DAY)
                .toList();
    }

    private void models(List<UnitCover> units, List<DateLine> lines) {
        Map<Long, List<UnitCover>> byModel = units.stream()
                .filter(unit -> unit.modelId().isPresent())
                .collect(Collectors.groupingBy(unit -> unit.modelId().getAsLong()));
        for (Model model : catalogue.all()) {
            List<UnitCover> of = byModel.getOrDefault(model.id, List.of());
            if (!of.isEmpty()) {
                CoverWords.Sum sum = CoverWords.Sum.of(Cost.of(of));
                String name = " " + model.maker + " " + model.name;
                String link = "/models/" + model.id;
                add(lines, model.endOfSale, "Sale of" + name, model.endOfSaleSource, link, sum);
                add(lines, model.endOfSoftware, "Software for" + name, model.endOfSoftwareSource, link, sum);
                add(lines, model.endOfSupport, "Support for" + name, model.endOfSupportSource, link, sum);
            }
        }
    }

    private static void add(
            List<DateLine> lines, LocalDate day, String what, String source, String link, CoverWords.Sum sum) {
        if (day != null) {
            lines.add(new DateLine(day, what, source, link, sum));
        }
    }

    private void contracts(List<DateLine> lines) {
        contracts
                .all(CustomerScope.everyone())
                .forEach(contract -> lines.add(new DateLine(
                        contract.to(),
                        "Contract " + contract.number() + " of " + contract.customer(),
                        contract.supplier(),
                        "/warranty/contracts/" + contract.id(),
                        new CoverWords.Sum(contract.units(), Words.count(contract.units()), List.of(), ""))));
    }

    private void exceptions(List<DateLine> lines) {
        policies.all().forEach(line -> line.exceptions()
                .forEach(exception -> lines.add(new DateLine(
                        exception.lastDay(),
                        "Firmware exception of " + exception.customer(),
                        exception.reason(),
                        "/firmware/policy/" + line.lineId(),
                        new CoverWords.Sum(0, "", List.of(), "")))));
    }
}
