package org.roundsman.web.signin;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.quarkus.security.Authenticated;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import org.jboss.resteasy.reactive.RestForm;
import org.roundsman.people.PeopleException;
import org.roundsman.people.SignIns;
import org.roundsman.web.page.Faults;
import org.roundsman.web.page.Visitor;

/** A person's own password. */
@Path("/password")
@Produces(MediaType.TEXT_HTML)
@Authenticated
class PasswordPages {

    private final SignIns signIns;
    private final Cookies cookies;
    private final Visitor visitor;

    PasswordPages(SignIns signIns, Cookies cookies, Visitor visitor) {
        this.signIns = signIns;
        this.cookies = cookies;
        this.visitor = visitor;
    }

    @CheckedTemplate(basePath = "signin")
    static class Templates {
        private Templates() {}

        static native TemplateInstance password(boolean first, Faults faults);
    }

    @GET
    public TemplateInstance form() {
        return Templates.password(visitor.person().mustChange(), Faults.NONE);
    }

    @POST
    public Response change(
            @RestForm @DefaultValue("") String old,
            @RestForm @DefaultValue("") String password,
            @RestForm @DefaultValue("") String again) {
        if (!password.equals(again)) {
            return refused(Faults.of("again", "The two new passwords differ."));
        }
        try {
            String token = signIns.changePassword(visitor.person().accountId(), old, password);
            return Response.seeOther(URI.create("/")).cookie(cookies.of(token)).build();
        } catch (PeopleException e) {
            return refused(Faults.of(e.field(), e.getMessage()));
        }
    }

    private Response refused(Faults faults) {
        return Response.status(422)
                .entity(Templates.password(visitor.person().mustChange(), faults))
                .build();
    }
}
