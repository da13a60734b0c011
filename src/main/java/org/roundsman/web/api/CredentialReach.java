package org.roundsman.web.api;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.ws.rs.NotFoundException;
import java.util.Map;
import java.util.stream.Stream;
import org.roundsman.fleet.Credential;
import org.roundsman.fleet.Credentials;
import org.roundsman.fleet.Sites;

/**
 * Which credentials a token reaches. One that is narrowed to a customer sees the customer's and everybody's, and changes
 * the customer's only.
 */
@ApplicationScoped
class CredentialReach {

    private final Credentials credentials;
    private final Sites sites;
    private final Caller caller;

    CredentialReach(Credentials credentials, Sites sites, Caller caller) {
        this.credentials = credentials;
        this.sites = sites;
        this.caller = caller;
    }

    Stream<Credential> visible() {
        return credentials.usableBy(caller.scope().onlyCustomer()).stream();
    }

    Credential find(long id) {
        return credentials
                .find(id)
                .filter(one -> one.customer == null || caller.scope().includes(one.customer.id))
                .orElseThrow(NotFoundException::new);
    }

    /** One that may be changed. */
    Credential findOwn(long id) {
        Credential found = find(id);
        if (found.customer == null) {
            caller.requireEveryone();
        }
        return found;
    }

    /**
     * @throws ProblemException when the credentials would belong to somebody out of reach
     */
    void requireOwner(CredentialJson.Entry entry) {
        if (entry.customerId() == null && entry.siteId() == null) {
            caller.requireEveryone();
        }
        if (entry.customerId() != null && !caller.scope().includes(entry.customerId())) {
            throw new ProblemException(Problem.refused(Map.of("customerId", "this customer is not there any more")));
        }
        if (entry.siteId() != null && sites.find(caller.scope(), entry.siteId()).isEmpty()) {
            throw new ProblemException(Problem.refused(Map.of("siteId", "this site is not there any more")));
        }
    }
}
