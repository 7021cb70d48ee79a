package org.demebook.web.animal;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.util.List;
import org.demebook.ancestry.Ancestries;
import org.demebook.breeding.Introductions;
import org.demebook.consent.GrantState;
import org.demebook.consent.Grants;
import org.demebook.diary.CareRecords;
import org.demebook.keeper.CollectionView;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Standing;
import org.demebook.litter.Litters;
import org.demebook.planning.BreedingHolds;
import org.demebook.plot.Lifeline;
import org.demebook.rearing.Rearing;
import org.demebook.registry.AnimalFindings;
import org.demebook.registry.AnimalView;
import org.demebook.registry.Animals;
import org.demebook.registry.Localities;
import org.demebook.rest.Page;
import org.demebook.transfer.Transfers;
import org.demebook.web.Pages;
import org.demebook.web.Visit;
import org.jspecify.annotations.Nullable;

/** Gathers what the page of an animal tells; of what is not for the one who looks, nothing is asked. */
@ApplicationScoped
class Portraits {
    private static final int MONTHS_OF_A_YOUNG = 18;

    @Inject
    Visit visit;

    @Inject
    Pages pages;

    @Inject
    Animals animals;

    @Inject
    Keepers keepers;

    @Inject
    Ancestries ancestries;

    @Inject
    Localities localities;

    @Inject
    AnimalFindings findings;

    @Inject
    BreedingHolds holds;

    @Inject
    Grants grants;

    @Inject
    Transfers transfers;

    @Inject
    Rearing rearing;

    @Inject
    Litters litters;

    @Inject
    CareRecords diaries;

    @Inject
    Introductions introductions;

    Portrait of(Standing by, String typed) {
        var animal = animals.get(by, typed);
        var number = animal.number();
        var words = pages.words(AnimalMessages.class);
        boolean mine = animal.revision() != null;
        var own = mine ? keepers.collections(by) : List.<CollectionView>of();
        var held = animal.held();
        boolean inHand = mine
                && held != null
                && own.stream().anyMatch(collection -> collection.id().equals(held.collection()));
        var descent = Descent.of(ancestries.charted(by, number, 0), localities.of(by, number));
        var young = Brood.of(ancestries.young(by, number));
        return new Portrait(
                animal,
                Listed.name(animal),
                mine,
                inHand,
                animal.litter() != null && litters.sees(by, animal.litter()),
                Age.of(animal.born(), lastDay(animal), words),
                where(animal, own, words),
                descent,
                young,
                mine ? findings.of(by, number) : null,
                holds.get(by, number),
                mine ? shared(by, animal) : List.of(),
                transfers.openOf(by, animal.id()).orElse(null),
                mine ? care(by, animal, inHand, words) : null,
                life(by, animal, young, words),
                visit.getBase() + "/animals/" + number,
                pages.words(CorrectionMessages.class));
    }

    private List<SharedWith> shared(Standing by, AnimalView animal) {
        var live = grants.page(by, GrantState.LIVE, null, null, Page.MOST);
        return SharedWith.of(animal, live.items());
    }

    private Lifeline life(Standing by, AnimalView animal, List<Brood> young, AnimalMessages words) {
        var until = lastDay(animal);
        return new LifeStory(animal, visit, words)
                .told(
                        until == null ? visit.getToday() : until,
                        young,
                        diaries.diary(by, animal.id()),
                        introductions
                                .page(by, animal.number(), null, null, Page.MOST)
                                .items());
    }

    /** Today, or the last day of its life; null where nobody knows when that was. */
    private @Nullable LocalDate lastDay(AnimalView animal) {
        if (animal.alive()) {
            return visit.getToday();
        }
        var died = animal.held() == null ? null : animal.held().died();
        return died == null ? null : died.latest();
    }

    private static String where(AnimalView animal, List<CollectionView> own, AnimalMessages words) {
        var held = animal.held();
        if (held == null) {
            return "";
        }
        if (held.collection() == null) {
            return own.isEmpty() ? "" : words.noCollection();
        }
        return own.stream()
                .filter(collection -> collection.id().equals(held.collection()))
                .findFirst()
                .map(collection -> words.ownCollection(collection.label()))
                .orElse(words.otherCollection());
    }

    private Care care(Standing by, AnimalView animal, boolean inHand, AnimalMessages words) {
        if (!inHand) {
            return new Care(List.of(), null, null, null, null, List.of());
        }
        var number = animal.number();
        var born = animal.born() == null ? null : animal.born().latest();
        boolean young =
                animal.alive() && born != null && born.isAfter(visit.getToday().minusMonths(MONTHS_OF_A_YOUNG));
        var growth = rearing.growth(by, number);
        var points = growth.points();
        var gain = new Gain(visit, words);
        return new Care(
                rearing.tests(by, number, null),
                young ? rearing.readiness(by, number, null) : null,
                points.isEmpty() ? null : gain.alongTime(number, points),
                Gain.byAge(points) ? gain.byAge(number, points) : null,
                growth.gramsPerWeek(),
                growth.behind());
    }
}
