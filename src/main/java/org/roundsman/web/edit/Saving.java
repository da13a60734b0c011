package org.roundsman.web.edit;

import io.quarkus.qute.TemplateInstance;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.function.Function;
import java.util.function.Supplier;
import org.roundsman.fleet.InputRejected;
import org.roundsman.web.page.Faults;

/** Saves an entry and goes on to its page, or shows the form again with what is wrong in it. */
public final class Saving {

    private Saving() {}

    /**
     * @param entry what could be read of the form
     * @param save does it, and returns the address to go on to
     * @param again the form with those faults
     */
    public static Response of(Entry entry, Supplier<String> save, Function<Faults, TemplateInstance> again) {
        if (!entry.readable()) {
            return refused(again.apply(new Faults(entry.faults())));
        }
        try {
            return Response.seeOther(URI.create(save.get())).build();
        } catch (InputRejected e) {
            if (e.faults().containsKey("id")) {
                throw new NotFoundException(e);
            }
            return refused(again.apply(new Faults(e.faults())));
        }
    }

    private static Response refused(TemplateInstance form) {
        return Response.status(422).entity(form).build();
    }
}
