package org.roundsman.web.api;

/** An operation as the guide lists it. */
record DescribedOperation(String method, String path, String summary) {}
