package org.demebook.web.breeding;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.LocalDate;
import java.util.List;
import org.demebook.breeding.BreedingSigns;
import org.demebook.breeding.Cycles;
import org.demebook.breeding.Introductions;
import org.demebook.breeding.Sires;
import org.demebook.incubation.Incubations;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Standing;
import org.demebook.notation.Sex;
import org.demebook.registry.Animals;
import org.demebook.registry.Populations;
import org.demebook.rest.Page;
import org.demebook.taxon.BirthMode;

/** Gathers what is told of an animal's breeding, as it is at one moment. */
@ApplicationScoped
class BreedingStories {
    private static final int SHOWN = 50;

    @Inject
    Animals animals;

    @Inject
    Keepers keepers;

    @Inject
    Populations populations;

    @Inject
    Cycles cycles;

    @Inject
    Sires sires;

    @Inject
    BreedingSigns signs;

    @Inject
    Introductions introductions;

    @Inject
    Incubations incubations;

    @Transactional
    BreedingStory of(Standing by, String typed, LocalDate today) {
        var animal = animals.get(by, typed);
        var number = animal.number();
        boolean laysEggs = populations.get(by).birthMode() == BirthMode.EGG_LAYING;
        boolean female = animal.sex() == Sex.FEMALE;
        boolean held = animal.held() != null
                && animal.held().collection() != null
                && keepers.collectionIds(by).contains(animal.held().collection());
        boolean told = female && held;
        return new BreedingStory(
                number,
                animal.sex(),
                held,
                told ? Awaited.of(cycles.of(by, number, today)) : null,
                told && animal.alive() ? sires.candidates(by, number, today) : null,
                female ? signs.page(by, number, null, SHOWN).items() : List.of(),
                introductions.page(by, number, null, null, Page.USUAL).items(),
                female && laysEggs ? incubations.of(by, number) : List.of(),
                laysEggs);
    }
}
