package org.roundsman.web;

import static io.restassured.RestAssured.given;

import io.restassured.http.ContentType;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import java.util.HashMap;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A browser without a screen: keeps cookies, follows no redirect, fills forms with their anti-forgery token. */
public final class Browser {

    private static final Pattern TOKEN = Pattern.compile("name=\"anti-forgery\" value=\"([^\"]+)\"");

    private final Map<String, String> cookies = new HashMap<>();

    /** A browser in which that person is signed in. */
    public static Browser of(String name, String password) {
        Browser browser = new Browser();
        Response answer = browser.signIn(name, password);
        if (answer.statusCode() != 303) {
            throw new AssertionError("Sign-in of " + name + " answered " + answer.statusCode());
        }
        return browser;
    }

    public Response signIn(String name, String password) {
        return post("/sign-in", "/sign-in", Map.of("name", name, "password", password));
    }

    /** Another one that stole the cookies of this one. */
    public Browser copy() {
        Browser copy = new Browser();
        copy.cookies.putAll(cookies);
        return copy;
    }

    public RequestSpecification request() {
        return given().cookies(cookies).redirects().follow(false);
    }

    /** The cookies as one header, for requests that are written by hand. */
    public String cookieHeader() {
        return cookies.entrySet().stream()
                .map(cookie -> cookie.getKey() + "=" + cookie.getValue())
                .collect(java.util.stream.Collectors.joining("; "));
    }

    public Response get(String path) {
        return kept(request().get(path));
    }

    /** Opens the page with the form and sends it. */
    public Response post(String formPath, String path, Map<String, String> fields) {
        return send(path, token(formPath), fields);
    }

    /** Sends a form with that anti-forgery token. */
    public Response send(String path, String token, Map<String, String> fields) {
        return kept(request()
                .contentType(ContentType.URLENC.withCharset("UTF-8"))
                .formParam("anti-forgery", token)
                .formParams(fields)
                .post(path));
    }

    private Response kept(Response answer) {
        answer.cookies().forEach((name, value) -> {
            if (value.isEmpty()) {
                cookies.remove(name);
            } else {
                cookies.put(name, value);
            }
        });
        return answer;
    }

    /** The anti-forgery token of the first form on that page. */
    public String token(String formPath) {
        Matcher matcher = TOKEN.matcher(get(formPath).asString());
        if (!matcher.find()) {
            throw new AssertionError("No form on " + formPath);
        }
        return matcher.group(1);
    }
}
