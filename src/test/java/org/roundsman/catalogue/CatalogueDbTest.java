package org.roundsman.catalogue;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.roundsman.audit.Actor;
import org.roundsman.audit.AuditEntry;
import org.roundsman.audit.AuditLog;
import org.roundsman.audit.AuditQuery;
import org.roundsman.audit.AuditTrail;
import org.roundsman.catalogue.FirmwareLine.Scheme;
import org.roundsman.fleet.DeviceKind;
import org.roundsman.fleet.InputRejected;
import org.roundsman.fleet.ListPrice;
import org.roundsman.fleet.Model;
import org.roundsman.fleet.ModelBuild;
import org.roundsman.fleet.ModelDraft;
import org.roundsman.fleet.ModelEnds;
import org.roundsman.fleet.ModelTerms;
import org.roundsman.web.FleetFixture;
import org.roundsman.web.MarkedPlaces;

/** Every change of the catalogue is noted with old and new values, and what is in use stays. */
@QuarkusTest
class CatalogueDbTest {

    @Inject
    Catalogue catalogue;

    @Inject
    FirmwareLines lines;

    @Inject
    FleetFixture fixture;

    @Inject
    MarkedPlaces places;

    @Inject
    AuditTrail trail;

    @Inject
    AuditLog log;

    private Actor actor;
    private String word;

    @BeforeEach
    void somebody() {
        word = UUID.randomUUID().toString().substring(0, 8);
        actor = new Actor("mara-" + word, 12L, Actor.Via.PAGE, "", "192.0.2.8");
    }

    private <T> T as(Supplier<T> work) {
        return trail.as(actor, work);
    }

    private List<String> said() {
        AuditQuery query = new AuditQuery("", actor.name(), "", null, null, "", null, null);
        List<AuditEntry> entries = new ArrayList<>(log.find(query, Optional.empty(), 100));
        Collections.reverse(entries);
        return entries.stream()
                .map(entry -> entry.action() + " " + entry.subject().kind() + " "
                        + entry.subject().name() + ": "
                        + entry.changes().stream()
                                .map(c -> c.field() + " " + c.old() + ">" + c.fresh())
                                .collect(Collectors.joining(", ")))
                .toList();
    }

    private FirmwareLineDraft line(Scheme scheme, String pattern) {
        return new FirmwareLineDraft("TR line " + word, scheme, pattern, "");
    }

    private ModelDraft model(Long lineId, String price) {
        return new ModelDraft(
                "Tamarack Radio",
                "TR-" + word,
                DeviceKind.ACCESS_POINT,
                "",
                new ModelBuild(2, 2, "2.4,5", "internal", false, 3, false, "ceiling rail"),
                new ListPrice(new BigDecimal(price), "EUR"),
                lineId,
                new ModelTerms("MONTHS", "PURCHASE", 36, "ADVANCE"),
                ModelEnds.NONE,
                "");
    }

    @Test
    void changesAreNotedWithOldAndNewValues() {
        FirmwareLine line = as(() -> lines.add(line(Scheme.DOTTED, "")));
        Model model = as(() -> catalogue.add(model(null, "249.00")));
        as(() -> catalogue.change(model.id, model(line.id, "259.00")));
        as(() -> catalogue.change(model.id, model(line.id, "259.00")));
        as(() -> lines.change(line.id, line(Scheme.PATTERN, "(\\d+)")));
        as(() -> {
            catalogue.remove(model.id);
            lines.remove(line.id);
            return "";
        });
        String of = "model Tamarack Radio TR-" + word + ": ";
        String lineName = "firmware line TR line " + word + ": ";
        List<String> said = said();
        assertThat(said).hasSize(6);
        assertThat(said.get(0))
                .isEqualTo("added " + lineName + "name >TR line " + word + ", compared by >dotted numbers");
        assertThat(said.get(1)).startsWith("added " + of).contains("list price >249.00 EUR", "mount >ceiling rail");
        assertThat(said.get(2))
                .isEqualTo("changed " + of + "list price 249.00 EUR>259.00 EUR, firmware line >TR line " + word);
        assertThat(said.get(3))
                .isEqualTo("changed " + lineName + "compared by dotted numbers>a pattern, pattern >(\\d+)");
        assertThat(said.get(4)).startsWith("removed " + of).contains("list price 259.00 EUR>", "warranty months 36>");
        assertThat(said.get(5)).startsWith("removed " + lineName).contains("pattern (\\d+)>");
    }

    @Test
    void whatIsInUseStaysAndItIsSaidByHowMany() {
        FirmwareLine line = lines.add(line(Scheme.SEMANTIC, ""));
        Model model = catalogue.add(model(line.id, "249.00"));
        FleetFixture.Place place = fixture.place("Saltmarsh");
        places.tell("update device set model_id = " + model.id + " where id = " + place.deviceId());
        assertThatThrownBy(() -> as(() -> {
                    catalogue.remove(model.id);
                    return "";
                }))
                .isInstanceOf(InputRejected.class)
                .hasMessageContaining("1 device is of this model");
        assertThatThrownBy(() -> lines.remove(line.id))
                .isInstanceOf(InputRejected.class)
                .hasMessageContaining("1 model takes this line");
        assertThat(catalogue.find(model.id)).isPresent();
        assertThat(lines.modelsOf(line.id)).extracting(one -> one.id).containsExactly(model.id);
        Catalogue.Entry entry = catalogue.entries().stream()
                .filter(one -> one.model().id.equals(model.id))
                .findFirst()
                .orElseThrow();
        assertThat(entry.devices()).isEqualTo(1);
        assertThat(entry.line().map(one -> one.name)).contains(line.name);
        assertThat(said()).isEmpty();
    }

    /** The database would remove them together with the model, and nobody would have decided that. */
    @Test
    void ruleValuesOfAModelKeepIt() {
        Model model = catalogue.add(model(null, "249.00"));
        places.tell("insert into rule_override (type, level, model_id, fields, author, at) values ('utilisation-high',"
                + " 'MODEL', " + model.id + ", '{}', 'nobody', now())");
        assertThatThrownBy(() -> catalogue.remove(model.id)).hasMessageContaining("1 rule has values of their own");
        places.tell("delete from rule_override where model_id = " + model.id);
        catalogue.remove(model.id);
        assertThat(catalogue.find(model.id)).isEmpty();
    }

    @Test
    void theKindOfAModelStaysWhileDevicesAreOfIt() {
        Model model = catalogue.add(model(null, "249.00"));
        FleetFixture.Place place = fixture.place("Saltmarsh");
        places.tell("update device set model_id = " + model.id + " where id = " + place.deviceId());
        ModelDraft other = ModelDraft.plain(model.maker, model.name, DeviceKind.NETWORK_SWITCH);
        assertThatThrownBy(() -> catalogue.change(model.id, other))
                .isInstanceOfSatisfying(InputRejected.class, e -> assertThat(e.faults())
                        .containsEntry(
                                "kind", "1 device is of this model as access point; give it another model first"));
        places.tell("update device set model_id = null where id = " + place.deviceId());
        assertThat(catalogue.change(model.id, other).kind).isEqualTo(DeviceKind.NETWORK_SWITCH);
    }

    /** Decisions are the owner's; whoever may change the catalogue must not remove them together with it. */
    @Test
    void whatIsDecidedAboutFirmwareKeepsItsLineAndItsModel() {
        FirmwareLine line = lines.add(line(Scheme.DOTTED, ""));
        Model model = catalogue.add(model(null, "249.00"));
        places.tell("insert into firmware_release (line_id, model_id, version, stand) values (" + line.id + ", "
                + model.id + ", '6.4.2', 'RECOMMENDED')");
        places.tell("insert into firmware_pilot_site (line_id, site_id) values (" + line.id + ", "
                + fixture.place("Saltmarsh").siteId() + ")");
        assertThatThrownBy(() -> lines.remove(line.id))
                .isInstanceOf(InputRejected.class)
                .hasMessageContaining("rests on this line, such as firmware decisions");
        assertThatThrownBy(() -> catalogue.remove(model.id))
                .isInstanceOf(InputRejected.class)
                .hasMessageContaining("rests on this model, such as firmware decisions");
        assertThat(places.number("select count(*) from firmware_release where line_id = " + line.id))
                .isEqualTo(1);
        places.tell("delete from firmware_release where line_id = " + line.id);
        catalogue.remove(model.id);
        assertThatThrownBy(() -> lines.remove(line.id))
                .as("a pilot site is a decision too")
                .isInstanceOf(InputRejected.class);
        places.tell("delete from firmware_pilot_site where line_id = " + line.id);
        lines.remove(line.id);
        assertThat(lines.find(line.id)).isEmpty();
        assertThat(catalogue.find(model.id)).isEmpty();
    }

    @Test
    void namesAndAnswersAreOnce() {
        FirmwareLine line = lines.add(line(Scheme.SEMANTIC, ""));
        Model model = catalogue.add(model(line.id, "249.00"));
        assertThatThrownBy(() -> lines.add(new FirmwareLineDraft(line.name.toUpperCase(), Scheme.DOTTED, "", "")))
                .hasMessageContaining("of this name already");
        assertThatThrownBy(() -> catalogue.add(
                        ModelDraft.plain("TAMARACK radio", model.name.toLowerCase(), DeviceKind.ACCESS_POINT)))
                .hasMessageContaining("a model of this name already");
        assertThatThrownBy(() -> catalogue.change(model.id, model(999_999_999L, "1")))
                .hasMessageContaining("no such firmware line");
        assertThatThrownBy(() -> catalogue.change(999_999_999L, model(null, "1")))
                .isInstanceOfSatisfying(
                        InputRejected.class, e -> assertThat(e.faults()).containsOnlyKeys("id"));
        assertThatThrownBy(() -> lines.remove(999_999_999L))
                .isInstanceOfSatisfying(
                        InputRejected.class, e -> assertThat(e.faults()).containsOnlyKeys("id"));
    }
}
