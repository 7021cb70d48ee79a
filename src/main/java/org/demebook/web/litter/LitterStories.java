package org.demebook.web.litter;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import org.demebook.diary.CareRecords;
import org.demebook.diary.Diary;
import org.demebook.keeper.Standing;
import org.demebook.litter.LitterPhotos;
import org.demebook.litter.LitterView;
import org.demebook.litter.Litters;
import org.demebook.litter.Mate;
import org.demebook.notation.Mass;
import org.demebook.reading.Readings;
import org.demebook.registry.AnimalView;
import org.demebook.registry.Animals;
import org.demebook.registry.IdentifierView;
import org.demebook.web.litter.LitterStory.Met;
import org.demebook.web.litter.LitterStory.Young;
import org.jspecify.annotations.Nullable;

/** Gathers what is told of a litter, through a fixed number of doors however many young there are, as it is at one moment. */
@ApplicationScoped
class LitterStories {
    @Inject
    Litters litters;

    @Inject
    LitterPhotos photos;

    @Inject
    Readings readings;

    @Inject
    CareRecords records;

    @Inject
    Animals animals;

    @Transactional
    LitterStory of(Standing by, UUID litterId) {
        var litter = litters.get(by, litterId);
        boolean own = litters.isOwn(by, litterId);
        return new LitterStory(
                litter,
                own,
                readings.read(by, litterId),
                young(by, litter),
                own ? mates(by, litterId) : List.of(),
                own ? litters.findings(by, litterId) : List.of(),
                own ? litters.left(by, litterId) : List.of(),
                litters.versions(by, litterId),
                photos.of(by, litterId));
    }

    private List<Young> young(Standing by, LitterView litter) {
        var known = animals.known(by, litter.young(), List.of(), false);
        var diaries = records.diaries(
                by,
                known.byNumber().values().stream()
                        .map(animal -> animal.view().id())
                        .toList());
        return litter.young().stream()
                .map(number -> known.numbered(number)
                        .map(animal -> young(animal.view(), diaries))
                        .orElseGet(() -> Young.unseen(number)))
                .toList();
    }

    private static Young young(AnimalView view, Map<UUID, Diary> diaries) {
        var weighed = diaries.getOrDefault(view.id(), Diary.of()).lastWeighing();
        return new Young(
                view.number(),
                true,
                view.sex(),
                view.alive(),
                reference(view),
                weighed.map(last -> Mass.grams(last.milligrams())).orElse(null),
                weighed.map(Diary.Weighing::on).orElse(null));
    }

    private static @Nullable String reference(AnimalView view) {
        return view.held() == null
                ? null
                : view.held().identifiers().stream()
                        .filter(identifier -> identifier.kind().equals("own-reference"))
                        .map(IdentifierView::value)
                        .findFirst()
                        .orElse(null);
    }

    private List<Met> mates(Standing by, UUID litterId) {
        var mates = litters.mates(by, litterId);
        var numbers = animals.numbers(
                by.populationId(), mates.stream().map(Mate::maleId).collect(Collectors.toSet()));
        return mates.stream()
                .map(mate -> new Met(numbers.get(mate.maleId()), mate.lastMetOn(), mate.grade(), mate.share()))
                .toList();
    }
}
