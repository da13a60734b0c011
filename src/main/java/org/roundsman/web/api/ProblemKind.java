package org.roundsman.web.api;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** What can go wrong with a request. The name, in lower case with hyphens, is part of the problem's address. */
public enum ProblemKind {
    UNREADABLE(
            400,
            "The request cannot be read",
            "The body is not the JSON that is expected, or a part of the address is not. The detail names the place.",
            "Mend the request. Sending the same again brings the same answer."),
    NO_TOKEN(
            401,
            "A good personal token is needed",
            "The request came without a token, or with one that is unknown, has run out or was revoked.",
            "Send the header “Authorization: Bearer” with a token. Tokens are made on the page “Tokens”."),
    NO_RIGHT(
            403,
            "The token does not allow this",
            "Its scopes, the role of its person, or the one customer that it is narrowed to exclude the request.",
            "Use a token with the scope that the detail names, or ask the owner for the role."),
    NOT_FOUND(
            404,
            "There is no such thing",
            "The address is unknown, or what it names is not there any more, or not this token's to see.",
            "List the things of that kind to find what is there."),
    NO_SUCH_METHOD(
            405,
            "This address does not take that method",
            "The header Allow tells which methods it takes.",
            "Look the address up in the description of the API."),
    NOT_ACCEPTABLE(
            406,
            "No answer in the wanted form",
            "The header Accept asks for a form that this address does not have.",
            "Ask for application/json."),
    IN_USE(
            409,
            "Something else stands against it",
            "It cannot be done as things are, for example because something still uses what is to be removed.",
            "The detail says what stands against it."),
    CHANGED_MEANWHILE(
            412,
            "It was changed meanwhile",
            "The entity tag in If-Match is not the one that the thing has now.",
            "Read it again, and make the change on what is there now."),
    TOO_LARGE(
            413, "The body is too large", "The service takes bodies up to a limit only.", "Send less in one request."),
    WRONG_TYPE(
            415,
            "The body is of the wrong type",
            "The header Content-Type names a type that this address does not take.",
            "Send application/json, or for a change application/merge-patch+json."),
    REFUSED(
            422,
            "Some fields cannot be taken",
            "The body could be read, but what it says is refused. Nothing was changed.",
            "The list “errors” names each field with the reason. Mend them all and send it again."),
    TOO_MANY(
            429,
            "Too many wrong tokens",
            "From this address came many wrong tokens within a minute.",
            "Wait as many seconds as the header Retry-After says. Tokens that worked lately go on working."),
    OUR_FAULT(
            500,
            "Something went wrong on our side",
            "This is a fault of the service.",
            "The log of the service tells more under the number in the detail."),
    AWAY(
            503,
            "The service cannot answer at this moment",
            "Its database does not answer. The rounds go on.",
            "Try again in a moment.");

    private final int status;
    private final String title;
    private final String meaning;
    private final String mend;

    ProblemKind(int status, String title, String meaning, String mend) {
        this.status = status;
        this.title = title;
        this.meaning = meaning;
        this.mend = mend;
    }

    public int status() {
        return status;
    }

    public String title() {
        return title;
    }

    /** What it means, in plain words. */
    public String meaning() {
        return meaning;
    }

    /** What to do, in plain words. */
    public String mend() {
        return mend;
    }

    /** The last part of its address. */
    public String slug() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** The problem's type: a page that explains it. */
    public String type() {
        return "/api/problems/" + slug();
    }

    static Optional<ProblemKind> of(String slug) {
        return Arrays.stream(values()).filter(kind -> kind.slug().equals(slug)).findFirst();
    }

    /** The kind for an HTTP status, the nearest where there is none of its own. */
    static ProblemKind of(int status) {
        return Arrays.stream(values())
                .filter(kind -> kind.status == status)
                .findFirst()
                .orElse(status >= 500 ? OUR_FAULT : UNREADABLE);
    }
}
