package org.roundsman.web.device;

import java.time.ZoneId;
import java.util.List;
import org.roundsman.measure.Outcome;
import org.roundsman.snmp.RawAnswer;
import org.roundsman.snmp.Visit;
import org.roundsman.web.page.Words;

/** One visit at a person's wish, as it is shown. */
record VisitView(
        boolean answered,
        String summary,
        String requests,
        List<Figure> figures,
        List<RadioLine> radios,
        List<Figure> networks,
        List<Figure> facts,
        List<String> remarks,
        List<RawAnswer> raw) {

    /** Nothing was asked, since the device's credentials do not open. */
    static VisitView unopened(Throwable fault) {
        return new VisitView(
                false,
                "The device was not asked: its SNMP credentials do not open. " + sentence(fault.getMessage()),
                "Nothing was sent.",
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of(),
                List.of());
    }

    private static String sentence(String text) {
        String whole = Character.toUpperCase(text.charAt(0)) + text.substring(1);
        return whole.endsWith(".") ? whole : whole + ".";
    }

    static VisitView of(Visit visit, ZoneId zone) {
        boolean answered = visit.outcome().kind() == Outcome.Kind.ANSWERED;
        return new VisitView(
                answered,
                (answered
                                ? "The device answered"
                                : "No figures: " + visit.outcome().text())
                        + (visit.profiles().isEmpty() ? "" : ". Read with " + String.join(", ", visit.profiles()))
                        + ".",
                Words.many(visit.requests(), "request", "requests") + " sent, " + visit.timeouts()
                        + " without a reply, at " + Words.moment(visit.at(), zone) + " site time.",
                answered ? Figures.ofDevice(visit.device(), !visit.radios().isEmpty()) : List.of(),
                RadioLine.of(visit.radios(), List.of()),
                Figures.ofNetworks(visit.networks()),
                visit.facts().map(facts -> Figures.ofFacts(facts.values())).orElse(List.of()),
                visit.remarks(),
                visit.raw());
    }
}
