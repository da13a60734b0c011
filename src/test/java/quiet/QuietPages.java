package quiet;

import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import java.util.function.Supplier;
import org.roundsman.audit.AuditTrail;

/** Planted: pages of which one changes something that no audit hears of. */
public final class QuietPages {

    private final Loud loud;

    public QuietPages(Loud loud) {
        this.loud = loud;
    }

    /** Notes what it does, behind an interface. */
    public interface Loud {
        String change();
    }

    /** The only one of its kind. */
    public static final class Noted implements Loud {

        private final AuditTrail audit;

        public Noted(AuditTrail audit) {
            this.audit = audit;
        }

        @Override
        public String change() {
            audit.did("changed", null);
            return "";
        }
    }

    @GET
    public String look() {
        return "";
    }

    @POST
    public String heard() {
        return done(() -> loud.change());
    }

    @POST
    public String heardByReference() {
        return done(loud::change);
    }

    @DELETE
    public String unheard() {
        return done(() -> "");
    }

    private static String done(Supplier<String> work) {
        return work.get();
    }
}
