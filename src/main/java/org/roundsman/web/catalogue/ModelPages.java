package org.roundsman.web.catalogue;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalLong;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;
import org.roundsman.catalogue.Catalogue;
import org.roundsman.catalogue.FirmwareLines;
import org.roundsman.firmware.LineMoves;
import org.roundsman.fleet.DeviceKind;
import org.roundsman.fleet.InputRejected;
import org.roundsman.fleet.Model;
import org.roundsman.fleet.ModelDraft;
import org.roundsman.people.Role;
import org.roundsman.web.edit.Entry;
import org.roundsman.web.edit.Saving;
import org.roundsman.web.page.Faults;
import org.roundsman.web.page.Visitor;
import org.roundsman.web.page.Words;

/** The catalogue of models. */
@Path("/models")
@Produces(MediaType.TEXT_HTML)
@RolesAllowed({Role.TECHNICIAN_ROLE, Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
class ModelPages {

    private final Catalogue catalogue;
    private final FirmwareLines lines;
    private final LineMoves moves;
    private final Visitor visitor;
    private final Clock clock;

    ModelPages(Catalogue catalogue, FirmwareLines lines, LineMoves moves, Visitor visitor, Clock clock) {
        this.catalogue = catalogue;
        this.lines = lines;
        this.moves = moves;
        this.visitor = visitor;
        this.clock = clock;
    }

    /** A kind with the number of its models. */
    record Tab(String title, String link, boolean here) {}

    /**
     * A model's form.
     *
     * @param remove where the button to remove it sends to; empty for a new one
     * @param lift what the box sends that agrees to lift a withdrawal; empty where there is nothing to agree to
     */
    record Page(String heading, String action, String remove, ModelForm form, ModelLists lists, String lift) {

        public boolean agreed() {
            return lift.equals(form.lift());
        }
    }

    @CheckedTemplate(basePath = "catalogue")
    static class Templates {
        private Templates() {}

        static native TemplateInstance models(List<ModelView> models, List<Tab> tabs, boolean keeps);

        static native TemplateInstance form(Page page, Faults faults);

        static native TemplateInstance model(ModelView model, String note);
    }

    @GET
    public TemplateInstance models(@RestQuery String kind) {
        List<Catalogue.Entry> all = catalogue.entries();
        LocalDate today = LocalDate.now(clock);
        List<ModelView> shown = all.stream()
                .filter(entry -> kind == null
                        || kind.isEmpty()
                        || word(entry.model().kind).equals(kind))
                .map(entry -> ModelView.of(entry, today))
                .toList();
        return Templates.models(shown, tabs(all, Entry.text(kind)), keeps());
    }

    private static List<Tab> tabs(List<Catalogue.Entry> all, String here) {
        List<Tab> tabs = new ArrayList<>();
        tabs.add(new Tab(Words.count(all.size()) + " in all", "/models", here.isEmpty()));
        for (DeviceKind kind : DeviceKind.values()) {
            long of = all.stream().filter(entry -> entry.model().kind == kind).count();
            String title =
                    Words.many(of, kind.word(), kind == DeviceKind.NETWORK_SWITCH ? "switches" : kind.word() + "s");
            tabs.add(new Tab(title, "/models?kind=" + word(kind), here.equals(word(kind))));
        }
        return tabs;
    }

    private static String word(DeviceKind kind) {
        return kind.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    private boolean keeps() {
        return visitor.person().role().keepsCatalogue();
    }

    @GET
    @Path("new")
    @RolesAllowed({Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
    public TemplateInstance fresh() {
        return adding(ModelForm.blank(), Faults.NONE);
    }

    @POST
    @RolesAllowed({Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
    public Response add(@BeanParam ModelForm form) {
        Entry entry = new Entry();
        ModelDraft draft = form.draft(entry);
        return Saving.of(entry, () -> "/models#model-" + catalogue.add(draft).id, faults -> adding(form, faults));
    }

    private TemplateInstance adding(ModelForm form, Faults faults) {
        return form(new Page("Add a model", "/models", "", form, ModelLists.of(lines.all(), form), ""), faults);
    }

    /** The form for those who keep the catalogue; for others what is known. */
    @GET
    @Path("{id}")
    public TemplateInstance model(@RestPath long id) {
        Catalogue.Entry entry = entry(id);
        return keeps()
                ? changing(entry, ModelForm.of(ModelDraft.of(entry.model())), Faults.NONE, "")
                : Templates.model(ModelView.of(entry, LocalDate.now(clock)), entry.model().note);
    }

    @POST
    @Path("{id}")
    @RolesAllowed({Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
    public Response change(@RestPath long id, @BeanParam ModelForm form) {
        Catalogue.Entry now = entry(id);
        Entry entry = new Entry();
        ModelDraft draft = form.draft(entry);
        String lift = lift(now.model(), draft, form, entry);
        return Saving.of(
                entry,
                () -> "/models#model-" + catalogue.change(id, draft).id,
                faults -> changing(now, form, faults, lift));
    }

    /** What has to be agreed to before the model may move to another line; a fault of the field until it is. */
    private String lift(Model model, ModelDraft draft, ModelForm form, Entry entry) {
        if (entry.faults().containsKey("firmwareLineId")) {
            return "";
        }
        Optional<LineMoves.Lifted> lifted =
                moves.lifted(model.id, optional(model.firmwareLineId), optional(draft.firmwareLineId()));
        String agreement = lifted.isEmpty() ? "" : ModelForm.liftTo(draft.firmwareLineId());
        lifted.filter(one -> !agreement.equals(form.lift()))
                .ifPresent(one -> entry.fault("firmwareLineId", words(one)));
        return agreement;
    }

    private static OptionalLong optional(Long id) {
        return id == null ? OptionalLong.empty() : OptionalLong.of(id);
    }

    private static String words(LineMoves.Lifted lifted) {
        String devices = Words.many(lifted.devices(), "device of this model", "devices of this model");
        String first = lifted.to().isEmpty() ? "" : "have it withdrawn for " + lifted.to() + " first, or ";
        return "this lifts a withdrawal: " + devices + " would no longer count as withdrawn ("
                + String.join("; ", lifted.reasons()) + "). What is decided about " + lifted.from()
                + " holds for its models only: " + first + "tick the box below";
    }

    @POST
    @Path("{id}/remove")
    @RolesAllowed({Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
    public Response remove(@RestPath long id) {
        Catalogue.Entry entry = entry(id);
        try {
            catalogue.remove(id);
            return Response.seeOther(URI.create("/models")).build();
        } catch (InputRejected e) {
            return Response.status(409)
                    .entity(changing(entry, ModelForm.of(ModelDraft.of(entry.model())), new Faults(e.faults()), ""))
                    .build();
        }
    }

    private Catalogue.Entry entry(long id) {
        return catalogue.entries().stream()
                .filter(entry -> entry.model().id == id)
                .findFirst()
                .orElseThrow(NotFoundException::new);
    }

    private TemplateInstance changing(Catalogue.Entry entry, ModelForm form, Faults faults, String lift) {
        String at = "/models/" + entry.model().id;
        String heading = entry.model().maker + " " + entry.model().name;
        return form(new Page(heading, at, at + "/remove", form, ModelLists.of(lines.all(), form), lift), faults);
    }

    private static TemplateInstance form(Page page, Faults faults) {
        return Templates.form(page, faults);
    }
}
