package org.roundsman.web.api;

import com.fasterxml.jackson.annotation.JsonInclude;
import jakarta.ws.rs.core.Response;
import java.util.List;
import java.util.Map;
import org.roundsman.system.StorableText;

/**
 * What went wrong, after RFC 9457.
 *
 * @param type address of a page that explains this kind of problem
 * @param errors field by field; left out where no field is to blame
 */
@JsonInclude(JsonInclude.Include.NON_EMPTY)
public record Problem(String type, String title, int status, String detail, List<FieldError> errors) {

    public static final String MEDIA_TYPE = "application/problem+json";

    /** What is wrong with one field. Halves of characters in what the client sent are no text that an answer could hold. */
    public record FieldError(String field, String reason) {

        public FieldError {
            field = StorableText.whole(field);
            reason = StorableText.whole(reason);
        }
    }

    public Problem {
        detail = StorableText.whole(detail);
    }

    static Problem of(ProblemKind kind, String detail) {
        return new Problem(kind.type(), kind.title(), kind.status(), detail, List.of());
    }

    static Problem refused(Map<String, String> faults) {
        ProblemKind kind = ProblemKind.REFUSED;
        List<FieldError> errors = faults.entrySet().stream()
                .map(fault -> new FieldError(fault.getKey(), fault.getValue()))
                .toList();
        return new Problem(kind.type(), kind.title(), kind.status(), "Nothing was changed.", errors);
    }

    Response response() {
        return Response.status(status).type(MEDIA_TYPE).entity(this).build();
    }
}
