package org.roundsman.discovery;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.roundsman.discovery.recognise.Identity;
import org.roundsman.discovery.recognise.Known;
import org.roundsman.discovery.recognise.ModelMatch;
import org.roundsman.discovery.store.Finding;
import org.roundsman.fleet.Credentials;
import org.roundsman.fleet.DeviceIdentities;
import org.roundsman.fleet.DeviceIdentities.Stored;
import org.roundsman.fleet.DeviceKind;
import org.roundsman.fleet.Model;
import org.roundsman.fleet.Models;
import org.roundsman.measure.Fact;
import org.roundsman.measure.Facts;
import org.roundsman.profiles.ProfilesInUse;

/** What the fleet knows that may be what a sweep found. */
@ApplicationScoped
class FleetPicture {

    private final DeviceIdentities devices;
    private final Models models;
    private final Credentials credentials;
    private final ProfilesInUse profiles;

    @Inject
    FleetPicture(DeviceIdentities devices, Models models, Credentials credentials, ProfilesInUse profiles) {
        this.devices = devices;
        this.models = models;
        this.credentials = credentials;
        this.profiles = profiles;
    }

    /** The catalogue of models. */
    List<Model> models() {
        return models.all();
    }

    /** The devices of the site, and those that share a mark with one of the findings. */
    List<Known> known(long siteId, Collection<Finding> findings) {
        List<String> values = new ArrayList<>();
        List<String> macs = new ArrayList<>();
        for (Finding finding : findings) {
            for (Fact fact : List.of(Fact.SERIAL, Fact.BASE_MAC, Fact.ENGINE_ID)) {
                Optional.ofNullable(finding.facts().values().get(fact)).ifPresent(values::add);
            }
            finding.facts().radios().stream()
                    .map(radio -> radio.mac().toLowerCase(Locale.ROOT))
                    .filter(mac -> !mac.isEmpty())
                    .forEach(macs::add);
        }
        return devices.like(siteId, values, macs).stream()
                .map(FleetPicture::known)
                .toList();
    }

    private static Known known(Stored stored) {
        Identity identity = Identity.of(
                stored.facts().get(Fact.SERIAL.name()),
                stored.facts().get(Fact.MAKER.name()),
                stored.facts().get(Fact.BASE_MAC.name()),
                stored.radioMacs(),
                stored.facts().get(Fact.ENGINE_ID.name()));
        return new Known(
                stored.deviceId(),
                stored.customerId(),
                stored.siteId(),
                stored.site(),
                stored.name(),
                Ip.canonical(stored.host()),
                stored.port(),
                identity);
    }

    static Identity identity(Facts facts) {
        return Identity.of(
                facts.values().get(Fact.SERIAL),
                facts.values().get(Fact.MAKER),
                facts.values().get(Fact.BASE_MAC),
                facts.radios().stream().map(Facts.RadioFacts::mac).toList(),
                facts.values().get(Fact.ENGINE_ID));
    }

    Optional<Model> model(List<Model> catalogue, Facts facts) {
        List<ModelMatch.Candidate> candidates = catalogue.stream()
                .map(m -> new ModelMatch.Candidate(m.id, m.maker, m.name, m.objectId))
                .toList();
        return ModelMatch.of(candidates, said(facts, Fact.OBJECT_ID), said(facts, Fact.MAKER), said(facts, Fact.MODEL))
                .flatMap(match ->
                        catalogue.stream().filter(m -> m.id == match.id()).findFirst());
    }

    /** What it is, as its profiles say, else its model; else an access point when it has radios; else null. */
    DeviceKind kind(List<String> applied, Facts facts, Optional<Model> model) {
        String word =
                profiles.current().kindOf(applied, said(facts, Fact.OBJECT_ID)).orElse("");
        for (DeviceKind kind : DeviceKind.values()) {
            if (kind.word().equals(word)) {
                return kind;
            }
        }
        return model.map(m -> m.kind).orElse(facts.radios().isEmpty() ? null : DeviceKind.ACCESS_POINT);
    }

    String credential(Long id) {
        return id == null ? "" : credentials.find(id).map(c -> c.name).orElse("");
    }

    static String said(Facts facts, Fact fact) {
        return facts.values().getOrDefault(fact, "");
    }
}
