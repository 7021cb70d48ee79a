package org.demebook.web.figures;

import io.quarkus.qute.i18n.Message;
import io.quarkus.qute.i18n.MessageBundle;

/** Words of the population's figures. */
@MessageBundle("figures")
public interface FiguresMessages {
    @Message("Figures of {name}")
    String title(String name);

    @Message(
            "Of all animals that you may see or have computed with: somebody to whom others share more reads other figures.")
    String lede();

    @Message("About the population")
    String pages();

    @Message("Figures")
    String figures();

    @Message("Published counts")
    String counts();

    @Message("Description")
    String description();

    @Message("Today")
    String today();

    @Message(
            "No living animal is shown to you, or granted to be computed with. Register animals, or ask keepers to share theirs.")
    String nobody();

    @Message("Add animals")
    String addAnimals();

    @Message("What the figures mean")
    String meanings();

    @Message("Some figures rest on animals or parentages that you may have computed with and do not see.")
    String restsOnUnseen();

    @Message(
            "{animals} of the living animals count in the figures of today and in no picture below: they are not shown to you, and their days would follow from it.")
    String notShown(int animals);

    @Message("{animals} of those who live today are missing in earlier years: nobody knows since when they live.")
    String sinceUnknown(int animals);

    @Message("Figures take these animals' sires as true, though they are doubtful:")
    String doubtful();

    @Message("{low} to {high}")
    String range(String low, String high);

    @Message("at least {low}, if unknown parents are siblings")
    String worst(String low);

    @Message("{value} of the genes known alone")
    String ofKnown(String value);

    @Message("by the rise of inbreeding: {value}")
    String otherwise(String value);

    @Message("dams: {dams}, sires: {sires}, in one generation")
    String bred(int dams, int sires);

    @Message("{years} years")
    String years(String years);

    // figures, and what they mean

    @Message("Living animals")
    String living();

    @Message("Animals that are alive today and that you may see or have computed with. Whole animals, of every age.")
    String livingMeans();

    @Message("Gene diversity")
    String geneDiversity();

    @Message(
            "How much of the founders' genetic variety the living still have: the chance that two genes drawn from them at random are no copies of one founder's gene. From 0, where all are copies of one, to 1, where nothing is lost. A parent that nobody knows counts as unrelated to all, which flatters; the lower end takes all unknown parents for full siblings.")
    String geneDiversityMeans();

    @Message("Mean kinship")
    String meanKinship();

    @Message(
            "How related the living are on the mean, each with each and with itself: 1 less gene diversity. From 0 to 1; half-siblings have 0.125, full siblings 0.25.")
    String meanKinshipMeans();

    @Message("Founder genome equivalents")
    String genomeEquivalents();

    @Message(
            "How many unrelated founders would have the same gene diversity: 1 divided by twice the mean kinship. In founders. By coancestry; by the retention of alleles it is another quantity.")
    String genomeEquivalentsMeans();

    @Message("Effective founders")
    String effectiveFounders();

    @Message(
            "How many founders would give the same evenness if each had an equal share. In founders; well below their number where a few have most of it.")
    String effectiveFoundersMeans();

    @Message("Known ancestry")
    String knownAncestry();

    @Message(
            "The share of all genes of the living that is traced to stated founders; the rest was lost at parents that nobody knows. From 0 to 100 %. The lower it is, the less the other figures say.")
    String knownAncestryMeans();

    @Message("Effective size")
    String effectiveSize();

    @Message(
            "How many animals of an ideal population would lose variety as fast as this one. Below the number of animals, since few breed. From the dams and sires of the young born within the last generation: 4 × dams × sires ÷ (dams + sires). Beside it, where inbreeding rose from the generation before, what follows from that. In animals.")
    String effectiveSizeMeans();

    @Message("Generation")
    String generation();

    @Message("The mean age of parents at the births of their young, of those whose days and parents you see. In years.")
    String generationMeans();

    @Message("Founders")
    String founders();

    @Message("Animals taken from the wild whose genes the living have. An animal whose parents nobody knows is none.")
    String foundersMeans();

    // pictures

    @Message("Living animals, by year")
    String livingOverTime();

    @Message("How many animals are known to have lived at the end of each year, and how many live today.")
    String livingOverTimeSays();

    @Message("Gene diversity, past and expected")
    String diversityOverTime();

    @Message(
            "Gene diversity of those known to have lived at the end of each year, and what drift alone is expected to leave of it. The band reaches down to what it would be if all unknown parents were siblings; ahead of today it lies between the two effective sizes.")
    String diversityOverTimeSays();

    @Message(
            "Ahead: drift alone, at an effective size of {size} and {years} years to a generation; no newcomers, no choice of pairs. What a plan would do to it stands with the season.")
    String drift(String size, String years);

    @Message(
            "Nothing is said of the years ahead: no young of known parents was born within the last generation, as far as you see.")
    String noDrift();

    @Message("To the season")
    String toSeason();

    @Message("Ages")
    String ages();

    @Message("Living animals by age in full years and by sex. Of a birth that is known roughly the latest day counts.")
    String agesSay();

    @Message("What founders gave")
    String shares();

    @Message("The share of each founder in the genes of the living, beside equal shares.")
    String sharesSay();

    @Message("{share} of the genes come from parents that nobody knows, or from founders that you do not see.")
    String unnamed(String share);

    @Message("The {shown} founders with the largest shares, of {all}.")
    String someOf(int shown, int all);

    @Message("How much of the ancestry is known")
    String knownOverTime();

    @Message(
            "The share of the genes of those known to have lived at the end of each year that is traced to stated founders.")
    String knownOverTimeSays();

    @Message("The figures as a table")
    String asTable();

    @Message("There is nothing to draw yet: no animal with a known birth is shown to you.")
    String nothing();

    @Message("No founder is shown to you. State which animals were taken from the wild.")
    String noFounders();

    @Message("Year")
    String year();

    @Message("animals")
    String animals();

    @Message("today")
    String now();

    @Message("expected")
    String projected();

    @Message("range")
    String interval();

    @Message("unknown")
    String missing();

    @Message("Age")
    String age();

    @Message("not known")
    String ageUnknown();

    @Message("{from} to {to}")
    String ageClass(int from, int to);

    @Message("Males")
    String males();

    @Message("Females")
    String females();

    @Message("Sex unknown")
    String unknownSex();

    @Message("Founder")
    String founder();

    @Message("Share")
    String share();

    @Message("Equal share")
    String equalShare();
}
