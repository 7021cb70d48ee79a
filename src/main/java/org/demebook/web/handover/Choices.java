package org.demebook.web.handover;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Standing;
import org.demebook.notation.Sex;
import org.demebook.rearing.LeavingView;
import org.demebook.rearing.Readiness;
import org.demebook.rearing.Rearing;
import org.demebook.registry.AnimalView;
import org.demebook.registry.Animals;
import org.demebook.rest.Page;
import org.demebook.transfer.State;
import org.demebook.transfer.Transfers;
import org.demebook.web.Visit;
import org.jspecify.annotations.Nullable;

/** Which animals somebody may hand over: young that are ready first. */
@ApplicationScoped
class Choices {
    /** Until then an animal is looked at as a young that leaves for the first time. */
    private static final int YEARS_OF_A_YOUNG = 2;

    /**
     * @param open how many conditions for leaving a young does not meet; 0 for others
     * @param likelyOn when a young will be ready; null when it cannot be foreseen
     */
    public record Choice(
            AnimalView animal, int open, @Nullable LocalDate likelyOn) {
        public boolean isSexed() {
            return animal.sex() != Sex.UNKNOWN;
        }
    }

    /**
     * @param ready young that meet every condition for leaving
     * @param young the other young, the ones that lack least first
     * @param others grown animals
     * @param next leads to further animals; null on the last page
     */
    public record Choosing(
            List<Choice> ready,
            List<Choice> young,
            List<Choice> others,
            @Nullable String next) {
        public boolean isEmpty() {
            return ready.isEmpty() && young.isEmpty() && others.isEmpty();
        }
    }

    @Inject
    Animals animals;

    @Inject
    Keepers keepers;

    @Inject
    Transfers transfers;

    @Inject
    Rearing rearing;

    @Inject
    Visit visit;

    Choosing of(Standing by, @Nullable String after) {
        var own = keepers.collectionIds(by);
        var offered = offered(by);
        var page = animals.page(by, null, true, true, Page.after(after), Page.MOST);
        var free = page.items().stream()
                .filter(animal -> isHeld(animal, own) && !offered.contains(animal.number()))
                .toList();
        var ready = new ArrayList<Choice>();
        var notReady = new ArrayList<Choice>();
        var young = free.stream().filter(this::isYoung).toList();
        var leaving = rearing.readiness(by, young);
        for (int i = 0; i < young.size(); i++) {
            var choice = choice(young.get(i), leaving.get(i));
            (leaving.get(i).ready() ? ready : notReady).add(choice);
        }
        notReady.sort(Comparator.comparingInt(Choice::open));
        var others = free.stream()
                .filter(animal -> !isYoung(animal))
                .map(animal -> new Choice(animal, 0, null))
                .toList();
        return new Choosing(ready, notReady, others, page.next());
    }

    private static Choice choice(AnimalView animal, LeavingView leaving) {
        int open = (int) leaving.conditions().stream()
                .filter(condition -> condition.state() != Readiness.State.MET)
                .count();
        var expected = leaving.expected() == null ? null : leaving.expected().likely();
        return new Choice(animal, open, leaving.ready() ? null : expected);
    }

    /** Numbers of the animals that are offered to somebody already. */
    private Set<String> offered(Standing by) {
        return transfers.page(by, State.OFFERED, null, Page.MOST).items().stream()
                .filter(transfer -> transfer.given())
                .map(transfer -> transfer.animal().number())
                .collect(Collectors.toSet());
    }

    private static boolean isHeld(AnimalView animal, Set<UUID> own) {
        return animal.sameAs() == null
                && animal.held() != null
                && animal.held().collection() != null
                && own.contains(animal.held().collection());
    }

    boolean isYoung(AnimalView animal) {
        var born = animal.born() == null ? null : animal.born().earliest();
        return born != null && born.isAfter(visit.getToday().minusYears(YEARS_OF_A_YOUNG));
    }
}
