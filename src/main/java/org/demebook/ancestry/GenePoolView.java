package org.demebook.ancestry;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import org.demebook.ancestry.AncestryView.Contribution;
import org.demebook.rest.ShownTo;
import org.jspecify.annotations.Nullable;

/**
 * The living animals of a population that the asker may see or have computed with, as one pool of genes. The figures are absent while none is alive.
 *
 * <p>Every living animal counts, fatherless young too and whatever is on hold for breeding: the figures say what genes are
 * there, not which animals are to breed. A fatherless young counts with an inbreeding coefficient of 1 or near it, and so
 * raises mean kinship.
 *
 * @param living how many animals
 * @param meanKinship of all pairs, each animal with itself included; in [0, 1]
 * @param geneDiversity 1 − mean kinship
 * @param geneDiversityOfKnownGenes the same of the genes alone that trace to stated founders
 * @param geneDiversityIfUnknownAreSiblings what it would be if all unknown parents were full siblings of each other, the
 *     customary worst case
 * @param founderGenomeEquivalents 1 / (2 · mean kinship)
 * @param founderGenomeEquivalentsBy {@code coancestry}; by the retention of alleles is another quantity
 * @param effectiveFounders the number of founders that would give the same evenness with equal shares
 * @param knownAncestry the share of all genes, in [0, 1], that traces to stated founders
 * @param doubtfulSiresOf studbook numbers, of the living and all their ancestors, whose sire is doubtful: the figures take
 *     each as true; absent when none is
 * @param convention {@code unrelated}: an unknown parent counts as unrelated to all, which flatters
 * @param founders those that are shown, the largest contribution first
 * @param unnamedContribution what the founders' contributions leave to 1: genes lost at a parent that nobody knows, or
 *     of a founder that is not shown
 * @param throughAncestorsNotShown true where a figure rests on animals that are granted to be computed with and not to be seen;
 *     absent otherwise
 */
@ShownTo(ShownTo.Whom.ASKER_AS_FAR_AS_GRANTED)
public record GenePoolView(
        int living,
        @Nullable Double meanKinship,
        @Nullable Double geneDiversity,
        @Nullable Double geneDiversityOfKnownGenes,
        @Nullable Double geneDiversityIfUnknownAreSiblings,
        @Nullable Double founderGenomeEquivalents,
        String founderGenomeEquivalentsBy,
        @Nullable Double effectiveFounders,
        @Nullable Double knownAncestry,
        @JsonInclude(JsonInclude.Include.NON_EMPTY) List<String> doubtfulSiresOf,
        String convention,
        List<Contribution> founders,
        @Nullable Double unnamedContribution,
        @Nullable Boolean throughAncestorsNotShown) {}
