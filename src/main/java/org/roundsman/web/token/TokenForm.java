package org.roundsman.web.token;

import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jboss.resteasy.reactive.RestForm;
import org.roundsman.people.NewToken;
import org.roundsman.people.PeopleException;
import org.roundsman.people.TokenScope;

/** What the form for a new token sent. */
record TokenForm(
        @RestForm String name,
        @RestForm List<String> scopes,
        @RestForm String days,
        @RestForm String customer) {

    static TokenForm blank(int days) {
        return new TokenForm("", List.of(), String.valueOf(days), "");
    }

    public boolean ticked(TokenScope scope) {
        return scope == TokenScope.READ || scopes != null && scopes.contains(scope.word());
    }

    /**
     * @throws PeopleException naming the field that cannot be read
     */
    NewToken token() {
        return new NewToken(text(name), chosen(), wholeDays(), customerId());
    }

    private Set<TokenScope> chosen() {
        Set<TokenScope> chosen = EnumSet.of(TokenScope.READ);
        for (String word : scopes == null ? List.<String>of() : scopes) {
            chosen.add(TokenScope.of(word).orElseThrow(() -> new PeopleException("scopes", "Choose from the list.")));
        }
        return chosen;
    }

    private int wholeDays() {
        try {
            return Integer.parseInt(text(days).strip());
        } catch (NumberFormatException e) {
            throw new PeopleException("days", "This must be a whole number of days.");
        }
    }

    private Optional<Long> customerId() {
        try {
            return text(customer).isBlank() ? Optional.empty() : Optional.of(Long.valueOf(customer));
        } catch (NumberFormatException e) {
            throw new PeopleException("customer", "Choose one of the customers.");
        }
    }

    public String shownCustomer() {
        return text(customer);
    }

    private static String text(String value) {
        return value == null ? "" : value;
    }
}
