package org.demebook.web.description;

import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MultivaluedHashMap;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Stream;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Standing;
import org.demebook.problem.Finding;
import org.demebook.problem.ProblemType;
import org.demebook.problem.Refusal;
import org.demebook.registry.NewPopulation;
import org.demebook.registry.PopulationView;
import org.demebook.registry.Populations;
import org.demebook.taxon.BirthMode;
import org.demebook.taxon.SexSystem;
import org.demebook.taxon.TaxonProfile;
import org.demebook.web.Forms;
import org.demebook.web.FrameMessages;
import org.demebook.web.Option;
import org.demebook.web.Pages;
import org.demebook.web.Typed;
import org.demebook.web.Visit;
import org.jboss.resteasy.reactive.RestPath;
import org.jspecify.annotations.Nullable;

/** What a population is; coordinators describe it. */
@Path("/populations/{population}")
@Produces(Pages.HTML)
class DescriptionPage {
    private static final String REVISION = "revision";
    private static final String TESTS = "profile.breeding.testsBeforePairing";
    private static final int LONGEST_SOURCE = 500;

    @CheckedTemplate(basePath = "description", defaultName = CheckedTemplate.HYPHENATED_ELEMENT_NAME)
    static class Templates {
        static native TemplateInstance description(PopulationView population, List<ProfileGroup> groups, boolean kept);

        static native TemplateInstance edit(
                String name, List<ProfileGroup> groups, List<Option> modes, List<Option> sexSystems, Typed typed);
    }

    @Inject
    Visit visit;

    @Inject
    Pages pages;

    @Inject
    Forms forms;

    @Inject
    Populations populations;

    @Inject
    ObjectMapper json;

    @GET
    public Response description(@RestPath String population, @QueryParam("kept") @Nullable String kept) {
        var view = populations.get(visit.in(population));
        return pages.show(Templates.description(view, groups(view.profile()), kept != null));
    }

    @GET
    @Path("description")
    public Response edit(@RestPath String population) {
        var by = visit.in(population);
        Keepers.requireCoordinator(by);
        var view = populations.get(by);
        var typed = Typed.nothing()
                .with("name", view.name())
                .with("taxon", view.taxon())
                .with("locality", view.locality())
                .with("birthMode", view.birthMode().word())
                .with("profile.sexSystem", view.profile().sexSystem().word())
                .with(TESTS, String.join("\n", tests(view.profile())))
                .with(REVISION, view.revision());
        var profile = json.valueToTree(view.profile());
        for (var figure : ProfileFigure.values()) {
            typed.with(
                            figure.field(),
                            profile.at("/" + figure.path().replace('.', '/')).asText())
                    .with(figure.sourceField(), view.profile().sources().get(figure.path()));
        }
        return pages.show(form(by, typed));
    }

    @POST
    @Path("description")
    public Response describe(@RestPath String population, MultivaluedMap<String, String> form) {
        var by = visit.in(population);
        Keepers.requireCoordinator(by);
        var typed = Typed.of(form);
        return forms.attempt(
                typed,
                () -> {
                    var present = populations.get(by);
                    var body = forms.read(
                            Typed.of(asBody(by, form)),
                            NewPopulation.class,
                            Stream.concat(Stream.of(REVISION, TESTS), sourceFields())
                                    .toArray(String[]::new));
                    populations.describe(by, typed.ifMatch(), withSources(body, sources(typed, present)));
                    return pages.goTo(visit.getBase() + "?kept=yes");
                },
                refused -> form(by, refused));
    }

    private static Stream<String> sourceFields() {
        return Arrays.stream(ProfileFigure.values()).map(ProfileFigure::sourceField);
    }

    /** With the code, which stays, and a line for each test. */
    private static MultivaluedMap<String, String> asBody(Standing by, MultivaluedMap<String, String> form) {
        var body = new MultivaluedHashMap<String, String>();
        body.putAll(form);
        body.putSingle("code", by.populationCode());
        body.put(
                TESTS + "[]",
                Objects.requireNonNullElse(form.getFirst(TESTS), "")
                        .lines()
                        .map(String::strip)
                        .toList());
        return body;
    }

    private static NewPopulation withSources(NewPopulation body, Map<String, String> sources) {
        var profile = Objects.requireNonNull(body.profile());
        return new NewPopulation(
                body.code(),
                body.name(),
                body.taxon(),
                body.locality(),
                body.birthMode(),
                new TaxonProfile(
                        profile.sexSystem(),
                        profile.gestation(),
                        profile.litter(),
                        profile.breeding(),
                        profile.rearing(),
                        profile.daysOfQuarantine(),
                        sources));
    }

    /** As typed; those of what has no field here stay. */
    private Map<String, String> sources(Typed typed, PopulationView present) {
        var sources = new HashMap<>(present.profile().sources());
        var findings = new ArrayList<Finding>();
        for (var figure : ProfileFigure.values()) {
            var source = typed.text(figure.sourceField());
            if (source == null) {
                sources.remove(figure.path());
            } else if (source.length() > LONGEST_SOURCE) {
                findings.add(Finding.error(
                        figure.sourceField(),
                        null,
                        pages.words(DescriptionMessages.class).longSource(source.length())));
            } else {
                sources.put(figure.path(), source);
            }
        }
        if (!findings.isEmpty()) {
            throw new Refusal(
                    ProblemType.INVALID_VALUES, pages.words(FrameMessages.class).lookAtFields(), findings);
        }
        return sources;
    }

    private TemplateInstance form(Standing by, Typed typed) {
        var words = pages.words(DescriptionMessages.class);
        var view = populations.get(by);
        return Templates.edit(
                view.name(),
                groups(view.profile()),
                Arrays.stream(BirthMode.values())
                        .map(mode -> new Option(mode.word(), words.birthMode(mode)))
                        .toList(),
                Arrays.stream(SexSystem.values())
                        .map(system -> new Option(system.word(), words.sexSystem(system)))
                        .toList(),
                typed);
    }

    private static List<String> tests(TaxonProfile profile) {
        return Objects.requireNonNullElse(profile.breeding().testsBeforePairing(), List.of());
    }

    private List<ProfileGroup> groups(TaxonProfile profile) {
        var tree = json.valueToTree(profile);
        return Arrays.stream(ProfileFigure.Group.values())
                .map(group -> new ProfileGroup(
                        group,
                        Arrays.stream(ProfileFigure.values())
                                .filter(figure -> figure.group() == group)
                                .map(figure -> new ProfileGroup.Line(
                                        figure,
                                        written(
                                                figure,
                                                tree.at("/" + figure.path().replace('.', '/'))
                                                        .asInt()),
                                        Objects.requireNonNullElse(
                                                profile.sources().get(figure.path()), "")))
                                .toList()))
                .toList();
    }

    private String written(ProfileFigure figure, int value) {
        return switch (figure.unit()) {
            case DAYS -> pages.words(DescriptionMessages.class).days(visit.number(value));
            case COUNT -> visit.number(value);
            case GRAMS -> visit.mass(BigDecimal.valueOf(value));
            case MILLIMETRES -> visit.length(BigDecimal.valueOf(value));
        };
    }
}
