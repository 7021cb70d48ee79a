package org.demebook.web.animal;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.util.List;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Standing;
import org.demebook.notation.Sex;
import org.demebook.registry.Animals;
import org.demebook.registry.NewAnimal;
import org.demebook.rest.Page;
import org.demebook.web.Forms;
import org.demebook.web.Option;
import org.demebook.web.Pages;
import org.demebook.web.Typed;
import org.demebook.web.Visit;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;
import org.jspecify.annotations.Nullable;

/** The animals, mine or all that one may see, and the registration of one. */
@Path("/populations/{population}/animals")
@Produces(Pages.HTML)
class AnimalsPage {
    @CheckedTemplate(basePath = "animal", defaultName = CheckedTemplate.HYPHENATED_ELEMENT_NAME)
    static class Templates {
        static native TemplateInstance animals(List<Listed> animals, Asked asked, Choices choices);

        static native TemplateInstance register(Typed typed, Choices choices, List<Option> collections);
    }

    /**
     * What the list was asked for.
     *
     * @param which {@code mine} or {@code all}
     * @param state {@code living}, {@code dead} or {@code both}
     * @param sex a word of the API, or empty
     * @param next where the next page begins; null on the last
     */
    public record Asked(
            String which,
            String state,
            String sex,
            boolean first,
            @Nullable String next) {
        public boolean isMine() {
            return which.equals("mine");
        }

        public boolean isDeadToo() {
            return !state.equals("living");
        }

        /** This list, from the beginning. */
        public String query(String of) {
            return "?which=%s&state=%s&sex=%s".formatted(of, state, sex);
        }

        @Nullable
        Boolean alive() {
            return state.equals("both") ? null : (Boolean) state.equals("living");
        }

        @Nullable
        Sex ofSex() {
            return sex.isEmpty() ? null : Sex.parse(sex);
        }
    }

    @Inject
    Visit visit;

    @Inject
    Pages pages;

    @Inject
    Forms forms;

    @Inject
    Animals animals;

    @Inject
    Keepers keepers;

    @GET
    public Response list(
            @RestPath String population,
            @RestQuery @Nullable String which,
            @RestQuery @Nullable String state,
            @RestQuery @Nullable String sex,
            @RestQuery @Nullable String after) {
        var by = visit.in(population);
        boolean mine = which == null ? !keepers.collectionIds(by).isEmpty() : which.equals("mine");
        var asked = new Asked(
                mine ? "mine" : "all",
                state == null || !List.of("dead", "both").contains(state) ? "living" : state,
                sex == null || !List.of("female", "male", "unknown").contains(sex) ? "" : sex,
                after == null,
                null);
        var page = animals.page(by, asked.ofSex(), asked.alive(), mine, Page.after(after), Page.USUAL);
        return pages.show(Templates.animals(
                page.items().stream().map(Listed::of).toList(),
                new Asked(asked.which, asked.state, asked.sex, asked.first, page.next()),
                choices()));
    }

    @GET
    @Path("new")
    public Response form(@RestPath String population) {
        var by = visit.in(population);
        var typed = Typed.nothing()
                .with("sex", "unknown")
                .with("origin", "captive-bred")
                .with("sire.kind", "unknown");
        return pages.show(form(by, typed));
    }

    @POST
    public Response register(@RestPath String population, MultivaluedMap<String, String> form) {
        var by = visit.in(population);
        var sent = Typed.of(form);
        return forms.once(
                by.keeperId(),
                sent,
                () -> visit.getBase() + "/animals/"
                        + animals.register(by, forms.read(sent, NewAnimal.class))
                                .animal()
                                .number(),
                typed -> form(by, typed));
    }

    private TemplateInstance form(Standing by, Typed typed) {
        var mine = keepers.collections(by).stream()
                .map(collection -> new Option(collection.id().toString(), collection.label()))
                .toList();
        return Templates.register(typed, choices(), mine);
    }

    private Choices choices() {
        return Choices.of(pages);
    }
}
