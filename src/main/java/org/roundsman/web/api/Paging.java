package org.roundsman.web.api;

import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.QueryParam;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.ToLongFunction;
import java.util.stream.Stream;
import org.eclipse.microprofile.openapi.annotations.enums.SchemaType;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.Parameter;
import org.roundsman.audit.AuditLog;

/** Which piece of a list is wanted. */
public class Paging {

    private static final int MOST = 500;

    @QueryParam("size")
    @DefaultValue("100")
    @Parameter(
            description = "The most items of one piece, 1 to 500",
            schema = @Schema(type = SchemaType.INTEGER, minimum = "1", maximum = "500", defaultValue = "100"))
    String size;

    @QueryParam("after")
    @DefaultValue("")
    @Parameter(description = "Begins after that item; taken from “next” of the piece before, never made up")
    String after;

    /**
     * @throws ProblemException when it is out of range
     */
    int size() {
        Long wanted = Given.number("size", size);
        if (wanted == null || wanted < 1 || wanted > MOST) {
            throw new ProblemException(Problem.refused(Map.of("size", "from 1 to " + MOST)));
        }
        return wanted.intValue();
    }

    /**
     * Where the piece begins, for lists by ascending id; 0 for the first.
     *
     * @throws ProblemException when it was made up
     */
    long afterId() {
        try {
            return after.isEmpty() ? 0 : Long.parseLong(after);
        } catch (NumberFormatException e) {
            throw madeUp();
        }
    }

    /**
     * Where the piece begins, for the audit, which is ordered by time: microseconds since 1970, a dot, the id.
     *
     * @throws ProblemException when it was made up
     */
    Optional<AuditLog.Place> place() {
        if (after.isEmpty()) {
            return Optional.empty();
        }
        try {
            String[] parts = after.split("\\.", 2);
            Instant at = Instant.EPOCH.plus(Long.parseLong(parts[0]), ChronoUnit.MICROS);
            return Optional.of(new AuditLog.Place(at, Long.parseLong(parts[1])));
        } catch (RuntimeException e) {
            throw madeUp();
        }
    }

    static String place(AuditApi.ChangeJson change) {
        return ChronoUnit.MICROS.between(Instant.EPOCH, change.at()) + "." + change.id();
    }

    private static ProblemException madeUp() {
        return new ProblemException(Problem.refused(Map.of("after", "take it from “next” of the piece before")));
    }

    /** The piece, and one item more where there are more. */
    <T> List<T> cut(Stream<T> all, ToLongFunction<T> id) {
        long from = afterId();
        return all.filter(item -> id.applyAsLong(item) > from)
                .sorted(java.util.Comparator.comparingLong(id))
                .limit(size() + 1L)
                .toList();
    }
}
