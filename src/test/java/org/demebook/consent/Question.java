package org.demebook.consent;

import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A request as it is sent, but for who sends it.
 *
 * @param about the numbers and ids that the request names, but for the population
 * @param ifMatch the revision that the asker read; null where none is wanted
 */
record Question(
        String method,
        String address,
        List<String> about,
        String type,
        @Nullable Object body,
        @Nullable String ifMatch) {
    /** The same with another body. */
    Question with(Object other) {
        return new Question(method, address, about, type, other, ifMatch);
    }

    Response send(RequestSpecification asker) {
        if (ifMatch != null) {
            asker.header("If-Match", ifMatch);
        }
        asker.contentType(type);
        if (body instanceof byte[] bytes) {
            asker.body(bytes);
        } else if (body instanceof String text) {
            asker.body(text);
        } else if (body != null) {
            asker.body(body);
        }
        return asker.request(method, address);
    }
}
