package org.demebook.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import io.restassured.builder.RequestSpecBuilder;
import io.restassured.config.EncoderConfig;
import io.restassured.config.RestAssuredConfig;
import io.restassured.response.ValidatableResponse;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.UUID;
import org.demebook.Colony;

/** Sheets sent by a keeper of a colony. */
record Sheets(Colony colony, String keeper) {
    static final String CSV = "text/csv";
    static final String EXCEL = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";
    private static final Duration LONGEST = Duration.ofMinutes(3);

    ValidatableResponse check(String... lines) {
        return check(bytes(lines), CSV);
    }

    ValidatableResponse check(byte[] file, String mediaType) {
        return send("/import-checks", file, mediaType, UUID.randomUUID().toString());
    }

    ValidatableResponse checkLeaving(String rule, String reason, String... lines) {
        return send(
                "/import-checks?leave=" + rule + "&reason=" + reason,
                bytes(lines),
                CSV,
                UUID.randomUUID().toString());
    }

    /** Imports a sheet that leaves a rule as it is, and waits for its end. */
    ValidatableResponse importsLeaving(String rule, String reason, String... lines) {
        return end(send(
                        "/imports?leave=" + rule + "&reason=" + reason,
                        bytes(lines),
                        CSV,
                        UUID.randomUUID().toString())
                .statusCode(202)
                .extract()
                .header("Location"));
    }

    ValidatableResponse start(byte[] file, String mediaType, String idempotencyKey) {
        return send("/imports", file, mediaType, idempotencyKey);
    }

    /** Imports a sheet and waits for its end. */
    ValidatableResponse imports(String... lines) {
        return imports(bytes(lines), CSV);
    }

    ValidatableResponse imports(byte[] file, String mediaType) {
        var location = start(file, mediaType, UUID.randomUUID().toString())
                .statusCode(202)
                .extract()
                .header("Location");
        return end(location);
    }

    ValidatableResponse end(String location) {
        var deadline = Instant.now().plus(LONGEST);
        while (true) {
            var run = Colony.as(keeper).get(location).then().statusCode(200);
            if (!run.extract().path("state").equals("running")) {
                return run;
            }
            assertThat(Instant.now()).isBefore(deadline);
            pause();
        }
    }

    byte[] export(String query) {
        return Colony.as(keeper)
                .get(colony.path("/export" + query))
                .then()
                .statusCode(200)
                .extract()
                .asByteArray();
    }

    String exportedText(String query) {
        return new String(export(query), StandardCharsets.UTF_8);
    }

    static byte[] bytes(String... lines) {
        return String.join("\r\n", lines).getBytes(StandardCharsets.UTF_8);
    }

    private ValidatableResponse send(String below, byte[] file, String mediaType, String idempotencyKey) {
        var plain = RestAssuredConfig.config()
                .encoderConfig(
                        EncoderConfig.encoderConfig().appendDefaultContentCharsetToContentTypeIfUndefined(false));
        return Colony.as(keeper, idempotencyKey)
                .spec(new RequestSpecBuilder().setConfig(plain).build())
                .contentType(mediaType)
                .body(file)
                .post(colony.path(below))
                .then();
    }

    private static void pause() {
        try {
            Thread.sleep(20);
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }
}
