package org.roundsman.web.edit;

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
import org.jboss.resteasy.reactive.RestPath;
import org.roundsman.fleet.Device;
import org.roundsman.fleet.DeviceDraft;
import org.roundsman.fleet.Devices;
import org.roundsman.fleet.Site;
import org.roundsman.fleet.Sites;
import org.roundsman.people.Role;
import org.roundsman.web.page.Faults;
import org.roundsman.web.page.Visitor;

/** Devices, added, changed and removed by hand. */
@Path("/")
@Produces(MediaType.TEXT_HTML)
@RolesAllowed({Role.TECHNICIAN_ROLE, Role.ACCOUNT_MANAGER_ROLE, Role.OWNER_ROLE})
class DeviceEdits {

    private final Sites sites;
    private final Devices devices;
    private final DeviceChoices choices;
    private final Visitor visitor;

    DeviceEdits(Sites sites, Devices devices, DeviceChoices choices, Visitor visitor) {
        this.sites = sites;
        this.devices = devices;
        this.choices = choices;
        this.visitor = visitor;
    }

    @CheckedTemplate(basePath = "edit")
    static class Templates {
        private Templates() {}

        static native TemplateInstance device(
                String heading,
                String action,
                String remove,
                DeviceForm form,
                DeviceChoices.Lists lists,
                Faults faults);
    }

    @GET
    @Path("sites/{siteId}/devices/new")
    public TemplateInstance fresh(@RestPath long siteId) {
        return adding(site(siteId), DeviceForm.blank(), Faults.NONE);
    }

    @POST
    @Path("sites/{siteId}/devices")
    public Response add(@RestPath long siteId, @BeanParam DeviceForm form) {
        Site site = site(siteId);
        Entry entry = new Entry();
        DeviceDraft draft = form.draft(entry);
        return Saving.of(
                entry, () -> "/devices/" + devices.add(siteId, draft).id, faults -> adding(site, form, faults));
    }

    @GET
    @Path("devices/{id}/edit")
    public TemplateInstance edit(@RestPath long id) {
        Device device = device(id);
        return changing(device, DeviceForm.of(device), Faults.NONE);
    }

    @POST
    @Path("devices/{id}")
    public Response change(@RestPath long id, @BeanParam DeviceForm form) {
        Device device = device(id);
        Entry entry = new Entry();
        DeviceDraft draft = form.draft(entry);
        return Saving.of(
                entry, () -> "/devices/" + devices.change(id, draft).id, faults -> changing(device, form, faults));
    }

    @POST
    @Path("devices/{id}/remove")
    public Response remove(@RestPath long id) {
        Device device = device(id);
        devices.remove(id);
        return Response.seeOther(URI.create("/sites/" + device.site.id)).build();
    }

    private TemplateInstance adding(Site site, DeviceForm form, Faults faults) {
        String action = "/sites/" + site.id + "/devices";
        return Templates.device("Add a device at " + site.name, action, "", form, choices.of(site, form), faults);
    }

    private TemplateInstance changing(Device device, DeviceForm form, Faults faults) {
        String action = "/devices/" + device.id;
        DeviceChoices.Lists lists = choices.of(device.site, form);
        return Templates.device("Change " + device.name, action, action + "/remove", form, lists, faults);
    }

    private Site site(long id) {
        return sites.find(visitor.scope(), id).orElseThrow(NotFoundException::new);
    }

    private Device device(long id) {
        return devices.find(visitor.scope(), id).orElseThrow(NotFoundException::new);
    }
}
