package org.demebook.registry;

import static org.demebook.problem.ProblemType.DIED_ALREADY;
import static org.demebook.problem.ProblemType.SEX_CONTRADICTS_YOUNG;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Any;
import jakarta.enterprise.inject.Instance;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.demebook.keeper.Standing;
import org.demebook.notation.RoughDate;
import org.demebook.notation.Sex;
import org.demebook.photo.Photos;
import org.demebook.problem.Rule;
import org.demebook.registry.LifeEvents.LifeEvent;
import org.jspecify.annotations.Nullable;

/** What the facts of one animal's own life show beside each other: its sex then and now, its death and what came after. */
@ApplicationScoped
class OwnHistory {
    @Inject
    Photos photos;

    @Inject
    AnimalSight sight;

    @Inject
    @Any
    Instance<LifeEvents> lifeEvents;

    // ── the sex ──────────────────────────────────────────────────────────────────────────────────────────────────────

    /** A sex that is determined anew, beside the one that is registered and the young that it has. */
    List<Breach> sex(Standing by, Animal animal, Sex sex, @Nullable SexDetermination determination) {
        var breaches = new ArrayList<Breach>();
        contradictsYoung(by, animal, sex, determination).ifPresent(breaches::add);
        changed(animal, animal.sex, animal.sexDetermination(), sex, determination)
                .ifPresent(breaches::add);
        return breaches;
    }

    /** Young that the asker may not see have a say too, without a number: their parentage would not be possible. */
    private Optional<Breach> contradictsYoung(
            Standing by, Animal animal, Sex sex, @Nullable SexDetermination determination) {
        if (sex == Sex.UNKNOWN) {
            return Optional.empty();
        }
        var contradicting = Animal.youngOf(animal.populationId, animal.id).stream()
                .filter(young -> animal.id.equals(young.damId) == (sex == Sex.MALE))
                .toList();
        if (contradicting.isEmpty()) {
            return Optional.empty();
        }
        var isDam = sex == Sex.MALE;
        var rule = isDam ? Rule.DAM_NOT_FEMALE : Rule.SIRE_NOT_MALE;
        var message = "%s cannot be %s: it is registered as %s of %s. Correct that parentage first, or look again."
                .formatted(animal.number, sex.word(), isDam ? "dam" : "sire", told(sight.seen(by, contradicting)));
        if (determination != null && determination.presumed()) {
            return Optional.of(Breach.warning(
                    rule, "sex", sex.word(), message, "The sex: it is only presumed. Have it examined."));
        }
        var likelier = determination != null && determination.confirmed()
                ? "The parentage: the sex is confirmed."
                : "The sex: having young says more than an examination.";
        return Optional.of(Breach.block(SEX_CONTRADICTS_YOUNG, rule, "sex", sex.word(), message, likelier));
    }

    private static String told(List<Animal> young) {
        return switch (young.size()) {
            case 0 -> "young that are not shown to you";
            case 1 -> young.get(0).number;
            default -> "%s and %d others".formatted(young.get(0).number, young.size() - 1);
        };
    }

    private static Optional<Breach> changed(
            Animal animal, Sex before, @Nullable SexDetermination howBefore, Sex sex, @Nullable SexDetermination how) {
        if (before == Sex.UNKNOWN || sex == Sex.UNKNOWN || before == sex) {
            return Optional.empty();
        }
        int surer = Comparator.comparingInt(OwnHistory::sureness).compare(how, howBefore);
        return Optional.of(Breach.warning(
                Rule.SEX_CHANGED,
                "sex",
                sex.word(),
                "%s was found to be %s%s before, and is %s%s now. Both are kept. See that it is the same animal, and look at what was planned with it."
                        .formatted(animal.number, before.word(), told(howBefore), sex.word(), told(how)),
                surer == 0 ? null : "The %s finding: the other is surer.".formatted(surer > 0 ? "earlier" : "later")));
    }

    /** Nothing said is more than a guess and less than an examination that is told of. */
    private static int sureness(@Nullable SexDetermination how) {
        return how == null ? 1 : how.confidence().ordinal() * 2;
    }

    private static String told(@Nullable SexDetermination how) {
        return how == null
                ? ""
                : " (%s by %s)".formatted(how.confidence().word(), how.method().word());
    }

    /** The last change between two known sexes that stands in its history. */
    Optional<Breach> changedBefore(Animal animal) {
        var history = DeterminedSex.of(animal.populationId, List.of(animal.id));
        for (int i = 0; i + 1 < history.size(); i++) {
            var earlier = history.get(i + 1);
            var changed = changed(
                    animal,
                    earlier.sex,
                    earlier.determination(),
                    history.get(i).sex,
                    history.get(i).determination());
            if (changed.isPresent()) {
                return changed;
            }
        }
        return Optional.empty();
    }

    // ── the death ────────────────────────────────────────────────────────────────────────────────────────────────────

    /** A death that is reported, beside the one that is registered and what happened to the animal after it. */
    List<Breach> death(Animal animal, RoughDate on) {
        var breaches = new ArrayList<Breach>();
        if (animal.died != null && (animal.died.surelyBefore(on) || animal.died.surelyAfter(on))) {
            breaches.add(Breach.block(
                    DIED_ALREADY,
                    Rule.TWO_DEATHS,
                    "on",
                    on,
                    "%s is registered as dead since %s; now %s is said. Keep the one that is right: leave it with a reason to put %s in its place, or send nothing to keep %s."
                            .formatted(animal.number, animal.died, on, on, animal.died),
                    "The report that was made later after the death."));
        }
        afterDeath(animal, on).ifPresent(breaches::add);
        return breaches;
    }

    /** The first that happened to the living animal after its death. */
    Optional<Breach> afterDeath(Animal animal, RoughDate died) {
        var day = died.latest();
        if (day == null) {
            return Optional.empty();
        }
        var photographs =
                photos.ofAnimals(animal.populationId, List.of(animal.id)).getOrDefault(animal.id, List.of()).stream()
                        .filter(photo ->
                                photo.takenOn() != null && photo.takenOn().isAfter(day))
                        .map(photo -> new LifeEvent(photo.takenOn(), "it was photographed"));
        var told = lifeEvents.stream().flatMap(room -> room.after(animal.populationId, animal.id, day).stream());
        return Stream.concat(photographs, told)
                .min(Comparator.comparing(LifeEvent::on))
                .map(event -> Breach.warning(
                        Rule.EVENT_AFTER_DEATH,
                        "on",
                        died,
                        "%s died on %s, but on %s %s. Correct the day of death, or that record; of a dead animal that was sent on, leave it."
                                .formatted(animal.number, died, event.on(), event.what()),
                        null));
    }
}
