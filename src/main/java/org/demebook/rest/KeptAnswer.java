package org.demebook.rest;

import static org.demebook.problem.ProblemType.SHOWN_ONCE;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.hibernate.orm.panache.PanacheEntityBase;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.IdClass;
import jakarta.persistence.Table;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.time.Instant;
import java.util.UUID;
import org.demebook.problem.Refusal;
import org.jspecify.annotations.Nullable;

/** The answer to a POST, kept so that the same request sent again gets the same bytes. */
@Entity
@Table(name = "kept_answer")
@IdClass(KeptAnswer.Key.class)
class KeptAnswer extends PanacheEntityBase {
    record Key(UUID actorId, String key) {}

    @Id
    UUID actorId;

    @Id
    String key;

    byte[] fingerprint;
    int status;

    @Nullable
    String location;

    @Nullable
    String etag;

    @Nullable
    String mediaType;

    byte @Nullable [] body;
    Instant keptAt;

    protected KeptAnswer() {}

    Response fill(Once.Answer answer, ObjectMapper json) {
        status = answer.status();
        location = answer.location() == null ? null : answer.location().toString();
        etag = answer.revision() == null ? null : answer.revision().toString();
        if (answer.body() == null) {
            return response(null);
        }
        mediaType = Once.JSON;
        try {
            var bytes = json.writeValueAsBytes(answer.body());
            body = answer.kept() ? bytes : null;
            return response(bytes);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException(e);
        }
    }

    Response response(byte @Nullable [] bytes) {
        if (mediaType != null && bytes == null) {
            throw new Refusal(
                    SHOWN_ONCE,
                    "It was done the first time. The answer is not kept, since it held a secret, or words of somebody"
                            + " who left; read what came of it, or start anew to get another secret.");
        }
        var response = Response.status(status);
        if (location != null) {
            response.location(URI.create(location));
        }
        if (etag != null) {
            response.tag(Revision.tag(Long.parseLong(etag)));
        }
        if (bytes != null) {
            response.entity(bytes).type(mediaType);
        }
        return response.build();
    }
}
