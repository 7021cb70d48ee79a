package org.demebook.rest;

import jakarta.ws.rs.core.Application;
import org.demebook.problem.Problem;
import org.eclipse.microprofile.openapi.annotations.Components;
import org.eclipse.microprofile.openapi.annotations.OpenAPIDefinition;
import org.eclipse.microprofile.openapi.annotations.enums.SecuritySchemeType;
import org.eclipse.microprofile.openapi.annotations.info.Contact;
import org.eclipse.microprofile.openapi.annotations.info.Info;
import org.eclipse.microprofile.openapi.annotations.info.License;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.security.SecurityRequirement;
import org.eclipse.microprofile.openapi.annotations.security.SecurityScheme;
import org.eclipse.microprofile.openapi.annotations.servers.Server;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** The head of the contract. */
@OpenAPIDefinition(
        info =
                @Info(
                        title = "Demebook",
                        version = "1",
                        description = "A studbook that several keepers share: animals, litters, transfers, ancestry,"
                                + " pairings, counts. Times are UTC; days are as the keeper knows them, in the Extended"
                                + " Date/Time Format of ISO 8601-2. Errors are problem details of RFC 9457.",
                        contact = @Contact(name = "The keepers of this node", url = "https://demebook.example/"),
                        license = @License(name = "Apache-2.0", url = "https://www.apache.org/licenses/LICENSE-2.0")),
        servers = @Server(url = "/", description = "This node"),
        security = @SecurityRequirement(name = "token"),
        tags = {
            @Tag(name = "Sign-in", description = "Accounts, invitations, tokens"),
            @Tag(name = "Keepers", description = "Members and their collections"),
            @Tag(name = "Consent", description = "What a collection lets others see, and who saw it"),
            @Tag(name = "Populations", description = "The animals of one taxon from one locality"),
            @Tag(name = "Animals", description = "The register"),
            @Tag(name = "Breeding", description = "Introductions, breeding signs, due windows, incubation"),
            @Tag(name = "Litters", description = "What was bred, and what came of it"),
            @Tag(name = "Care records", description = "What happens to an animal in somebody's care, and what follows"),
            @Tag(name = "Care", description = "What is to be done, and when"),
            @Tag(name = "Transfers", description = "Animals that change hands"),
            @Tag(
                    name = "Crossings",
                    description =
                            "Animals that go to, or come from, keepers on other nodes, those of a node that is gone, and animals registered on two"),
            @Tag(name = "Ancestry", description = "Where an animal comes from"),
            @Tag(name = "Pairings", description = "Which animals should breed next"),
            @Tag(
                    name = "Season",
                    description = "Which pairs should have a litter in a season, and what keepers say to it"),
            @Tag(name = "Counts", description = "What is published"),
            @Tag(name = "Sheets", description = "Import and export"),
            @Tag(name = "Hand-over sheets", description = "What goes with an animal on paper"),
            @Tag(name = "Nodes", description = "Other nodes, and who this one is to them")
        },
        components =
                @Components(
                        schemas = @Schema(name = "Problem", implementation = Problem.class),
                        securitySchemes =
                                @SecurityScheme(
                                        securitySchemeName = "token",
                                        type = SecuritySchemeType.HTTP,
                                        scheme = "bearer",
                                        bearerFormat = "JWT",
                                        description = "The token of POST /api/v1/tokens, or of your Keycloak")))
public class Contract extends Application {}
