package org.roundsman.web;

import static io.restassured.RestAssured.given;

import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;

/** A program that asks the API with a personal token. */
public final class Api {

    public static final String MERGE = "application/merge-patch+json";

    private final String token;

    private Api(String token) {
        this.token = token;
    }

    public static Api with(String token) {
        return new Api(token);
    }

    public RequestSpecification request() {
        return given().header("Authorization", "Bearer " + token).redirects().follow(false);
    }

    /** Without a body. */
    public Response post(String path) {
        return request().noContentType().post("/api/v1" + path);
    }

    /** Below /api/v1. */
    public Response get(String path) {
        return request().get("/api/v1" + path);
    }

    public Response post(String path, String json) {
        return request().contentType("application/json").body(json).post("/api/v1" + path);
    }

    public Response patch(String path, String json) {
        return request().contentType(MERGE).body(json).patch("/api/v1" + path);
    }

    public Response delete(String path) {
        return request().delete("/api/v1" + path);
    }

    /** Any address, with an empty JSON object where it takes a body. */
    Response ask(Addresses.Address address) {
        RequestSpecification request = request();
        request = address.type().isEmpty()
                ? request.noContentType()
                : request.contentType(address.type()).body("{}");
        return request.request(address.method(), address.path());
    }
}
