package org.demebook.rest;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.exc.StreamConstraintsException;
import com.fasterxml.jackson.databind.JsonMappingException;
import com.fasterxml.jackson.databind.exc.InvalidFormatException;
import com.fasterxml.jackson.databind.exc.MismatchedInputException;
import com.fasterxml.jackson.databind.exc.UnrecognizedPropertyException;
import io.quarkus.oidc.OIDCException;
import io.quarkus.security.AuthenticationFailedException;
import io.quarkus.security.ForbiddenException;
import io.quarkus.security.UnauthorizedException;
import jakarta.persistence.PersistenceException;
import jakarta.validation.ConstraintViolationException;
import jakarta.ws.rs.WebApplicationException;
import jakarta.ws.rs.core.Response;
import java.sql.SQLException;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.StreamSupport;
import org.demebook.problem.Finding;
import org.demebook.problem.Problem;
import org.demebook.problem.ProblemType;
import org.demebook.problem.Refusal;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.jboss.logging.Logger;
import org.jboss.resteasy.reactive.server.ServerExceptionMapper;
import org.jspecify.annotations.Nullable;

/** Turns whatever went wrong into problem details (RFC 9457): the one place where errors become answers. */
class Problems {
    private static final Logger LOG = Logger.getLogger(Problems.class);
    static final String MEDIA_TYPE = "application/problem+json";

    private final String howToSignIn;

    Problems(
            @ConfigProperty(name = "demebook.sign-in") String signIn,
            @ConfigProperty(name = "quarkus.oidc.auth-server-url") Optional<String> realm) {
        howToSignIn = signIn.equals("local")
                ? "Sign in (POST /api/v1/tokens) and send the token as \"Authorization: Bearer …\"; a token ends after some hours."
                : "Get a token from %s and send it as \"Authorization: Bearer …\", or sign in by browser at /sign-in; a token ends after some minutes."
                        .formatted(realm.orElse("the Keycloak of this node"));
    }

    @ServerExceptionMapper
    Response refusal(Refusal refusal) {
        return response(refusal.problem());
    }

    @ServerExceptionMapper
    Response invalidValues(ConstraintViolationException invalid) {
        var findings = invalid.getConstraintViolations().stream()
                .map(violation -> Finding.error(
                        field(violation.getPropertyPath()), shown(violation.getInvalidValue()), violation.getMessage()))
                .sorted((a, b) -> String.valueOf(a.field()).compareTo(String.valueOf(b.field())))
                .toList();
        var detail = findings.stream()
                .map(finding -> finding.field() + " " + finding.message())
                .collect(Collectors.joining("; "));
        return response(new Refusal(ProblemType.INVALID_VALUES, detail + ".", findings).problem());
    }

    @ServerExceptionMapper({UnauthorizedException.class, AuthenticationFailedException.class})
    Response notSignedIn(SecurityException unauthorized) {
        return Response.fromResponse(of(ProblemType.NOT_SIGNED_IN, howToSignIn))
                .header("WWW-Authenticate", "Bearer")
                .build();
    }

    @ServerExceptionMapper
    Response keycloakAway(OIDCException failed) {
        LOG.warnf("Keycloak does not answer: %s", failed.getMessage());
        return of(
                ProblemType.UNAVAILABLE,
                "Keycloak, which says whether your token is good, does not answer. Try again in a while.");
    }

    @ServerExceptionMapper
    Response notAllowed(ForbiddenException forbidden) {
        return of(ProblemType.NOT_ALLOWED, "Your role does not include this; ask the one who runs the node.");
    }

    // the framework has a mapper of its own for mismatched input; ours is nearer
    @ServerExceptionMapper({JsonProcessingException.class, MismatchedInputException.class})
    Response unreadable(JsonProcessingException unreadable) {
        return json(unreadable);
    }

    @ServerExceptionMapper
    Response byStatus(WebApplicationException failed) {
        for (Throwable cause = failed.getCause(); cause != null; cause = cause.getCause()) {
            if (cause instanceof Refusal refusal) {
                return response(refusal.problem());
            }
            if (cause instanceof JsonProcessingException unreadable) {
                return json(unreadable);
            }
        }
        var status = failed.getResponse().getStatus();
        return switch (status) {
            case 400 -> of(ProblemType.UNREADABLE_BODY, "The body of the request is missing or cannot be read.");
            case 401 -> of(ProblemType.NOT_SIGNED_IN, "Sign in first.");
            case 403 -> of(ProblemType.NOT_ALLOWED, "Your role does not include this.");
            case 404 ->
                of(ProblemType.NO_SUCH_ADDRESS, "Nothing is at this address; the contract at /openapi lists all.");
            case 405 -> of(ProblemType.METHOD_NOT_ALLOWED, "The contract at /openapi says what this address takes.");
            case 406 -> of(ProblemType.NOT_ACCEPTABLE, "Accept one of the forms that the contract at /openapi names.");
            case 413 -> of(ProblemType.TOO_LARGE, "Send it in smaller parts.");
            case 415 ->
                of(
                        ProblemType.UNSUPPORTED_MEDIA_TYPE,
                        "Send it as Content-Type: application/json, or as the contract says.");
            default ->
                status < 500
                        ? of(ProblemType.UNREADABLE_BODY, "The request cannot be understood.")
                        : unexpected(failed);
        };
    }

    @ServerExceptionMapper
    Response database(PersistenceException failed) {
        var state = sqlState(failed);
        if (state != null && (state.equals("40001") || state.equals("40P01") || state.startsWith("23"))) {
            LOG.infof("refused by the database: %s", failed.getMessage());
            return of(ProblemType.CONFLICT, "Nothing was changed. Read again and send again.");
        }
        return unexpected(failed);
    }

    @ServerExceptionMapper
    Response unexpected(Throwable bug) {
        LOG.error("unexpected", bug);
        return of(
                ProblemType.UNEXPECTED,
                "Nothing was changed. The log of the server has the cause; tell the one who runs the node.");
    }

    private static Response json(JsonProcessingException unreadable) {
        if (unreadable instanceof StreamConstraintsException tooMuch) {
            return of(
                    ProblemType.TOO_LARGE,
                    "The body is larger or deeper than is taken here: " + tooMuch.getOriginalMessage());
        }
        if (unreadable instanceof UnrecognizedPropertyException unknown) {
            var path = path(unknown);
            return response(new Refusal(
                            ProblemType.UNKNOWN_FIELD,
                            "There is no field \"%s\" here. Known are: %s."
                                    .formatted(
                                            path,
                                            unknown.getKnownPropertyIds() == null
                                                    ? ""
                                                    : unknown.getKnownPropertyIds().stream()
                                                            .map(String::valueOf)
                                                            .sorted()
                                                            .collect(Collectors.joining(", "))),
                            List.of(Finding.error(path, null, "does not exist")))
                    .problem());
        }
        if (unreadable instanceof JsonMappingException mapping
                && !mapping.getPath().isEmpty()) {
            return response(badValue(mapping));
        }
        var at = unreadable.getLocation();
        return of(
                ProblemType.UNREADABLE_BODY,
                "The body is no valid JSON"
                        + (at == null ? "." : " (line %d, column %d).".formatted(at.getLineNr(), at.getColumnNr())));
    }

    private static Problem badValue(JsonMappingException mapping) {
        var path = path(mapping);
        var value = mapping instanceof InvalidFormatException format ? shown(format.getValue()) : null;
        Throwable root = mapping;
        while (root.getCause() != null) {
            root = root.getCause();
        }
        // our own value classes explain themselves; the library's words would name classes
        var message = root instanceof IllegalArgumentException && !(root instanceof NumberFormatException)
                ? String.valueOf(root.getMessage())
                : "is not of the kind that is expected here";
        return new Refusal(
                        ProblemType.INVALID_VALUES,
                        "%s: %s".formatted(path, message),
                        List.of(Finding.error(path, value, message)))
                .problem();
    }

    private static String path(JsonMappingException mapping) {
        var path = new StringBuilder();
        for (var step : mapping.getPath()) {
            if (step.getFieldName() == null) {
                path.append('[').append(step.getIndex()).append(']');
            } else {
                path.append(path.isEmpty() ? "" : ".").append(step.getFieldName());
            }
        }
        return path.toString();
    }

    private static String field(jakarta.validation.Path path) {
        // the first two nodes are the method and its parameter, which the sender does not know
        return StreamSupport.stream(path.spliterator(), false)
                .skip(2)
                .map(Object::toString)
                .collect(Collectors.joining("."));
    }

    private static @Nullable String shown(@Nullable Object value) {
        if (value == null || value instanceof byte[]) {
            return null;
        }
        var text = value.toString();
        return text.length() <= 80 ? text : text.substring(0, 79) + "…";
    }

    private static @Nullable String sqlState(Throwable failed) {
        for (Throwable cause = failed; cause != null; cause = cause.getCause()) {
            if (cause instanceof SQLException sql) {
                return sql.getSQLState();
            }
        }
        return null;
    }

    private static Response of(ProblemType type, String detail) {
        return response(new Problem(type.uri(), type.title(), type.status(), detail, List.of()));
    }

    static Response response(Problem problem) {
        return Response.status(problem.status())
                .type(MEDIA_TYPE)
                .entity(problem)
                .build();
    }
}
