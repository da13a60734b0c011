package org.roundsman.web.claims;

import org.jboss.resteasy.reactive.RestForm;
import org.roundsman.claims.Claim;

/** What passes between us and the maker or supplier, as text, to be shown again when something in it is wrong. */
record PapersForm(
        @RestForm String party,
        @RestForm String reference,
        @RestForm String shippedOn,
        @RestForm String tracking) {

    static PapersForm of(Claim.Papers papers) {
        return new PapersForm(
                papers.party(),
                papers.reference(),
                papers.shippedOn().map(Object::toString).orElse(""),
                papers.tracking());
    }

    PapersForm shown() {
        return new PapersForm(Entry.text(party), Entry.text(reference), Entry.text(shippedOn), Entry.text(tracking));
    }

    Claim.Papers papers() {
        return new Claim.Papers(
                Entry.text(party), Entry.text(reference), Entry.day("shippedOn", shippedOn), Entry.text(tracking));
    }
}
