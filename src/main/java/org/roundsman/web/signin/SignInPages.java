package org.roundsman.web.signin;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import io.vertx.ext.web.RoutingContext;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import org.jboss.resteasy.reactive.RestForm;
import org.jboss.resteasy.reactive.RestQuery;
import org.roundsman.people.Role;
import org.roundsman.people.SignInResult;
import org.roundsman.people.SignIns;
import org.roundsman.web.page.LocalAddress;

/** Signing in and out. */
@Path("/")
@Produces(MediaType.TEXT_HTML)
class SignInPages {

    /** The same words for every reason, so that nobody learns which names there are. */
    private static final String REFUSED =
            "Name and password do not fit. After five failures in a row an account is locked for 15 minutes.";

    private static final String BUSY = "Too many people sign in at this moment. Try again in a minute.";

    private final SignIns signIns;
    private final Cookies cookies;
    private final RoutingContext context;

    SignInPages(SignIns signIns, Cookies cookies, RoutingContext context) {
        this.signIns = signIns;
        this.cookies = cookies;
        this.context = context;
    }

    @CheckedTemplate(basePath = "signin")
    static class Templates {
        private Templates() {}

        static native TemplateInstance signIn(String name, String next, String fault);
    }

    @GET
    @Path("sign-in")
    public TemplateInstance form(@RestQuery @DefaultValue("/") String next) {
        return Templates.signIn("", LocalAddress.of(next), "");
    }

    @POST
    @Path("sign-in")
    public Response signIn(
            @RestForm @DefaultValue("") String name,
            @RestForm @DefaultValue("") String password,
            @RestForm @DefaultValue("/") String next) {
        String from = context.request().remoteAddress().hostAddress();
        SignInResult result = signIns.signIn(name.strip(), password, from);
        if (result instanceof SignInResult.Welcome welcome) {
            URI target =
                    URI.create(welcome.person().mustChange() ? "/password" : start(welcome, LocalAddress.of(next)));
            return Response.seeOther(target).cookie(cookies.of(welcome.token())).build();
        }
        boolean busy = result instanceof SignInResult.Busy;
        return Response.status(busy ? 503 : 401)
                .entity(Templates.signIn(name, LocalAddress.of(next), busy ? BUSY : REFUSED))
                .build();
    }

    /** Who asked for nothing in particular begins with what is theirs to do: decisions for an owner, reports for an account manager. */
    private static String start(SignInResult.Welcome welcome, String next) {
        if (!next.equals("/")) {
            return next;
        }
        Role role = welcome.person().role();
        return role == Role.OWNER ? "/ahead" : role == Role.ACCOUNT_MANAGER ? "/reports" : next;
    }

    @POST
    @Path("sign-out")
    public Response signOut() {
        cookies.token().ifPresent(signIns::signOut);
        return Response.seeOther(URI.create("/sign-in")).cookie(cookies.gone()).build();
    }
}
