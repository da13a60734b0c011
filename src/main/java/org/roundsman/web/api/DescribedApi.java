package org.roundsman.web.api;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.smallrye.openapi.runtime.OpenApiConstants;
import io.quarkus.smallrye.openapi.runtime.OpenApiDocumentService;
import io.smallrye.openapi.runtime.io.Format;
import jakarta.enterprise.context.ApplicationScoped;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

/** The operations of the API, as its own description names them. */
@ApplicationScoped
class DescribedApi {

    /** In the order in which people look for them. */
    private static final List<String> METHODS = List.of("GET", "POST", "PUT", "PATCH", "DELETE");

    private final List<DescribedOperation> operations;

    DescribedApi(OpenApiDocumentService documents, ObjectMapper json) {
        operations = read(documents, json);
    }

    List<DescribedOperation> operations() {
        return operations;
    }

    /** The methods that an address takes; empty for an address that is not described. */
    Set<String> methods(String address) {
        List<DescribedOperation> here =
                operations.stream().filter(one -> one.isAt(address)).toList();
        long nearest =
                here.stream().mapToLong(DescribedOperation::fixedParts).max().orElse(0);
        Set<String> methods = here.stream()
                .filter(one -> one.fixedParts() == nearest)
                .map(DescribedOperation::method)
                .collect(Collectors.toCollection(TreeSet::new));
        if (methods.contains("GET")) {
            methods.add("HEAD"); // whatever can be read can be asked for without its body
        }
        return methods;
    }

    private static List<DescribedOperation> read(OpenApiDocumentService documents, ObjectMapper json) {
        List<DescribedOperation> all = new ArrayList<>();
        for (Map.Entry<String, JsonNode> path :
                tree(documents, json).path("paths").properties()) {
            for (Map.Entry<String, JsonNode> operation : path.getValue().properties()) {
                all.add(new DescribedOperation(
                        operation.getKey().toUpperCase(Locale.ROOT),
                        path.getKey(),
                        operation.getValue().path("tags").path(0).asText(),
                        operation.getValue().path("summary").asText()));
            }
        }
        all.sort(Comparator.comparing(DescribedOperation::path).thenComparing(one -> METHODS.indexOf(one.method())));
        return List.copyOf(all);
    }

    private static JsonNode tree(OpenApiDocumentService documents, ObjectMapper json) {
        try {
            return json.readTree(documents.getDocument(OpenApiConstants.DEFAULT_DOCUMENT_NAME, Format.JSON));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
