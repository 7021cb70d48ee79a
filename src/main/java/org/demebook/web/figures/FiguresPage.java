package org.demebook.web.figures;

import io.quarkus.qute.CheckedTemplate;
import io.quarkus.qute.TemplateInstance;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Response;
import java.util.ArrayList;
import java.util.List;
import org.demebook.ancestry.GenePoolView;
import org.demebook.ancestry.GenePools;
import org.demebook.ancestry.PoolOverTime;
import org.demebook.plot.Pyramid;
import org.demebook.plot.Shares;
import org.demebook.plot.Trend;
import org.demebook.registry.Populations;
import org.demebook.web.Pages;
import org.demebook.web.Visit;
import org.jboss.resteasy.reactive.RestPath;
import org.jspecify.annotations.Nullable;

/** The population in figures, as far as the one who looks may see it or have it computed with. */
@Path("/populations/{population}")
@Produces(Pages.HTML)
class FiguresPage {
    @CheckedTemplate(basePath = "figures", defaultName = CheckedTemplate.HYPHENATED_ELEMENT_NAME)
    static class Templates {
        static native TemplateInstance figures(
                String name,
                GenePoolView pool,
                PoolOverTime time,
                List<Told> told,
                Trend living,
                Trend diversity,
                Trend known,
                Pyramid ages,
                Shares founders,
                int mostFounders);
    }

    @Inject
    Visit visit;

    @Inject
    Pages pages;

    @Inject
    GenePools pools;

    @Inject
    Populations populations;

    @GET
    @Path("figures")
    public Response figures(@RestPath String population) {
        var by = visit.in(population);
        var figures = pools.of(by);
        var words = pages.words(FiguresMessages.class);
        var plots = new Plots(words, visit.getLocale(), figures.overTime());
        return pages.show(Templates.figures(
                populations.get(by).name(),
                figures.today(),
                figures.overTime(),
                told(words, figures.today(), figures.overTime().drift()),
                plots.living(),
                plots.geneDiversity(),
                plots.knownAncestry(),
                plots.ages(),
                plots.founders(figures.today(), visit.getBase()),
                Shares.MOST));
    }

    private List<Told> told(FiguresMessages words, GenePoolView pool, PoolOverTime.@Nullable Drift drift) {
        var told = new ArrayList<Told>();
        told.add(new Told("living", words.living(), visit.number(pool.living()), "", words.livingMeans()));
        told.add(new Told(
                "gene-diversity",
                words.geneDiversity(),
                visit.number(pool.geneDiversity(), 4),
                worst(words, pool),
                words.geneDiversityMeans()));
        told.add(new Told(
                "mean-kinship",
                words.meanKinship(),
                visit.number(pool.meanKinship(), 4),
                "",
                words.meanKinshipMeans()));
        told.add(new Told(
                "genome-equivalents",
                words.genomeEquivalents(),
                visit.number(pool.founderGenomeEquivalents(), 2),
                "",
                words.genomeEquivalentsMeans()));
        told.add(new Told(
                "effective-founders",
                words.effectiveFounders(),
                visit.number(pool.effectiveFounders(), 2),
                "",
                words.effectiveFoundersMeans()));
        told.add(new Told(
                "founders", words.founders(), visit.number(pool.founders().size()), "", words.foundersMeans()));
        told.add(new Told(
                "known-ancestry",
                words.knownAncestry(),
                visit.percent(pool.knownAncestry()),
                ofKnown(words, pool),
                words.knownAncestryMeans()));
        if (drift != null) {
            told.add(new Told(
                    "effective-size",
                    words.effectiveSize(),
                    visit.number(drift.effectiveSize(), 1),
                    words.bred(drift.dams(), drift.sires())
                            + (drift.effectiveSizeByInbreeding() == null
                                    ? ""
                                    : "; " + words.otherwise(visit.number(drift.effectiveSizeByInbreeding(), 1))),
                    words.effectiveSizeMeans()));
            told.add(new Told(
                    "generation",
                    words.generation(),
                    words.years(visit.number(drift.generationYears(), 1)),
                    "",
                    words.generationMeans()));
        }
        return told;
    }

    /** Where some ancestry is not known. */
    private String worst(FiguresMessages words, GenePoolView pool) {
        var worst = pool.geneDiversityIfUnknownAreSiblings();
        return worst == null || worst.equals(pool.geneDiversity()) ? "" : words.worst(visit.number(worst, 4));
    }

    private String ofKnown(FiguresMessages words, GenePoolView pool) {
        var known = pool.geneDiversityOfKnownGenes();
        return known == null || known.equals(pool.geneDiversity()) ? "" : words.ofKnown(visit.number(known, 4));
    }
}
