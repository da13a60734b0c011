package org.roundsman.web.api;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.vertx.core.http.HttpServerResponse;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.temporal.ChronoUnit;
import org.roundsman.people.TokenCheck;
import org.roundsman.people.TokenRefusals;

/** Answers requests whose token opens nothing: a problem with the challenge of RFC 6750, section 3. */
@ApplicationScoped
class TokenAnswers implements TokenRefusals {

    private static final String CHALLENGE = "Bearer realm=\"roundsman\"";

    private final ObjectMapper json;

    TokenAnswers(ObjectMapper json) {
        this.json = json;
    }

    @Override
    public void answer(RoutingContext request, TokenCheck.Refusal refusal) {
        HttpServerResponse response = request.response();
        if (refusal instanceof TokenCheck.Braked braked) {
            response.putHeader("Retry-After", String.valueOf(braked.retryAfterSeconds()));
            end(response, Problem.of(ProblemKind.TOO_MANY, ProblemKind.TOO_MANY.meaning()));
        } else if (refusal instanceof TokenCheck.Away) {
            end(response, Problem.of(ProblemKind.AWAY, ProblemKind.AWAY.meaning()));
        } else if (refusal instanceof TokenCheck.Missing) {
            response.putHeader("WWW-Authenticate", CHALLENGE);
            end(response, Problem.of(ProblemKind.NO_TOKEN, "The request came without a token."));
        } else {
            String why = why(refusal);
            response.putHeader("WWW-Authenticate", CHALLENGE + ", error=\"invalid_token\"");
            end(response, Problem.of(ProblemKind.NO_TOKEN, why));
        }
    }

    private static String why(TokenCheck.Refusal refusal) {
        if (refusal instanceof TokenCheck.Expired expired) {
            return "The token ran out at " + expired.at().truncatedTo(ChronoUnit.SECONDS) + ".";
        }
        if (refusal instanceof TokenCheck.Revoked revoked) {
            return "The token was revoked at " + revoked.at().truncatedTo(ChronoUnit.SECONDS) + ".";
        }
        return "We do not know this token, or its person may not sign in any more.";
    }

    private void end(HttpServerResponse response, Problem problem) {
        try {
            response.setStatusCode(problem.status())
                    .putHeader("Content-Type", Problem.MEDIA_TYPE)
                    .end(json.writeValueAsString(problem));
        } catch (JsonProcessingException e) {
            throw new IllegalStateException(e); // a record of plain values
        }
    }
}
