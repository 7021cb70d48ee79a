package org.demebook.census;

import static org.demebook.problem.ProblemType.BAD_PARAMETER;
import static org.demebook.problem.ProblemType.COUNTS_NOT_SAFE;
import static org.demebook.problem.ProblemType.DATE_IN_FUTURE;
import static org.demebook.problem.ProblemType.DAY_COUNTED_ALREADY;
import static org.demebook.problem.ProblemType.NOT_ALLOWED;
import static org.demebook.problem.ProblemType.NO_SUCH_POPULATION;
import static org.demebook.problem.ProblemType.NO_SUCH_RELEASE;

import io.quarkus.security.Authenticated;
import jakarta.annotation.security.PermitAll;
import jakarta.inject.Inject;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.demebook.keeper.SignedIn;
import org.demebook.problem.Refusal;
import org.demebook.rest.Once;
import org.demebook.rest.Once.Answer;
import org.demebook.rest.Page;
import org.demebook.rest.Refuses;
import org.demebook.rest.ShownTo;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jboss.resteasy.reactive.RestPath;
import org.jspecify.annotations.Nullable;

@Path("/api/v1/populations/{population}/count-releases")
@Authenticated
@Tag(name = "Counts")
class CountReleaseResource {
    /** A page of releases. */
    @ShownTo(ShownTo.Whom.EVERYBODY)
    record CountReleasePage(
            List<CountReleaseView> items, @Nullable String next) {}

    @Inject
    SignedIn signedIn;

    @Inject
    Census census;

    @Inject
    Once once;

    @POST
    @Operation(
            operationId = "releaseCounts",
            summary = "Count the living animals and release the counts (coordinators)")
    @APIResponse(
            responseCode = "201",
            description = "The release; everybody can read it, nobody can change it",
            content =
                    @Content(mediaType = "application/json", schema = @Schema(implementation = CountReleaseView.class)))
    @Refuses({NO_SUCH_POPULATION, NOT_ALLOWED, DATE_IN_FUTURE, DAY_COUNTED_ALREADY, COUNTS_NOT_SAFE})
    public Response release(@RestPath String population, @NotNull @Valid NewCountRelease release) {
        var by = signedIn.standing(population);
        var counts = census.count(by, release);
        return once.answer(by.keeperId(), release, () -> {
            var released = census.release(by, counts);
            return Answer.created(address(population, released.countedOn()), null, released);
        });
    }

    @GET
    @PermitAll
    @Operation(
            operationId = "listCountReleases",
            summary = "The counts that were released, the latest first",
            description = "Needs no sign-in.")
    @APIResponse(
            responseCode = "200",
            description = "A page of releases; the Link header leads to the next",
            content =
                    @Content(mediaType = "application/json", schema = @Schema(implementation = CountReleasePage.class)))
    @Refuses(BAD_PARAMETER)
    public Response releases(
            @RestPath String population,
            @QueryParam("after") @Nullable String after,
            @QueryParam("limit") @Nullable Integer limit,
            @Context UriInfo uri) {
        return census.releases(population, day(Page.after(after)), Page.limit(limit))
                .response(uri);
    }

    @GET
    @PermitAll
    @Path("{countedOn}")
    @Operation(operationId = "getCountRelease", summary = "The counts of a day", description = "Needs no sign-in.")
    @Refuses({NO_SUCH_RELEASE, BAD_PARAMETER})
    public CountReleaseView release(@RestPath String population, @RestPath LocalDate countedOn) {
        return census.get(population, countedOn);
    }

    @GET
    @PermitAll
    @Path("{countedOn}/table.csv")
    @Produces("text/csv;charset=UTF-8")
    @Operation(operationId = "getCountTable", summary = "The counts of a day as CSV", description = "Needs no sign-in.")
    @Refuses({NO_SUCH_RELEASE, BAD_PARAMETER})
    public String table(@RestPath String population, @RestPath LocalDate countedOn) {
        return csv(census.get(population, countedOn));
    }

    @GET
    @PermitAll
    @Path("{countedOn}/darwin-core.zip")
    @Produces("application/zip")
    @Operation(
            operationId = "getCountArchive",
            summary = "The counts of a day as a Darwin Core archive",
            description = "Needs no sign-in.")
    @Refuses({NO_SUCH_RELEASE, BAD_PARAMETER})
    public byte[] archive(@RestPath String population, @RestPath LocalDate countedOn) {
        return DarwinCoreArchive.of(census.get(population, countedOn));
    }

    @GET
    @PermitAll
    @Path("{countedOn}/darwin-core-regions.zip")
    @Produces("application/zip")
    @Operation(
            operationId = "getCountArchiveByRegion",
            summary = "The counts of a day by region as a Darwin Core archive",
            description =
                    "The same animals as in darwin-core.zip: add up the records of one of the two. Needs no sign-in.")
    @Refuses({NO_SUCH_RELEASE, BAD_PARAMETER})
    public byte[] archiveByRegion(@RestPath String population, @RestPath LocalDate countedOn) {
        return DarwinCoreArchive.byRegion(census.withRegions(population, countedOn));
    }

    private static String csv(CountReleaseView release) {
        var text = new StringBuilder();
        try (var csv = new CSVPrinter(text, CSVFormat.RFC4180)) {
            csv.printRecord(
                    "population",
                    "countedOn",
                    "sex",
                    "age",
                    "born",
                    "region",
                    "count",
                    "lowest",
                    "highest",
                    "informationWithheld");
            for (var cell : release.cells()) {
                csv.printRecord(
                        release.population(),
                        release.countedOn(),
                        cell.sex(),
                        cell.age(),
                        Heading.of(cell).born(),
                        Heading.of(cell).region(),
                        cell.count(),
                        cell.lowest(),
                        cell.highest(),
                        cell.informationWithheld());
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text.toString();
    }

    private static @Nullable LocalDate day(@Nullable String cursor) {
        try {
            return cursor == null ? null : LocalDate.parse(cursor);
        } catch (DateTimeParseException e) {
            throw new Refusal(
                    BAD_PARAMETER, "after is not a cursor of this list; take it from next of the page before.");
        }
    }

    private static URI address(String population, LocalDate countedOn) {
        return URI.create("/api/v1/populations/" + population + "/count-releases/" + countedOn);
    }
}
