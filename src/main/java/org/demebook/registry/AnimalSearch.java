package org.demebook.registry;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import org.demebook.consent.Action;
import org.demebook.consent.Consents;
import org.demebook.consent.FieldGroup;
import org.demebook.consent.ListCondition;
import org.demebook.consent.Purpose;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Standing;
import org.demebook.notation.StudbookNumber;
import org.demebook.notation.Transponder;
import org.demebook.photo.PhotoView;
import org.demebook.rest.ShownTo;
import org.demebook.wall.WholeRegister;
import org.jspecify.annotations.Nullable;

/**
 * Finds animals by what somebody has in hand: a studbook number or a part of one, a transponder, a mark, what they call it
 * themselves, the label of a photograph. Found is only what the view of the animal shows the asker, so what is hidden is absent.
 */
@ApplicationScoped
public class AnimalSearch {
    /** By what an animal was found. */
    public enum By {
        NUMBER,
        TRANSPONDER,
        OWN_REFERENCE,
        MARK,
        PHOTO_LABEL
    }

    /**
     * @param value what was found, as it is recorded
     * @param exact that is all of what was asked for; of a number the serial will do, as people say it
     */
    @ShownTo(ShownTo.Whom.ASKER_AS_FAR_AS_GRANTED)
    public record Found(AnimalView animal, By by, String value, boolean exact) {}

    private static final int LONGEST = 100;
    private static final int MOST_READ = 200;

    @Inject
    AnimalViews views;

    @Inject
    AnimalSight sight;

    @Inject
    Consents consents;

    @Inject
    Keepers keepers;

    @Inject
    Clock clock;

    @Inject
    EntityManager entities;

    /**
     * The exact finds first, then by what was found and by number; each animal once. Three queries over the population's numbers,
     * identifiers and labels, and those that show what was found.
     *
     * @param asked as somebody typed it, in either case; nothing is found for less than a letter or digit
     */
    @WholeRegister
    @Transactional
    public List<Found> find(Standing by, String asked, int limit) {
        var words = asked.strip().toLowerCase(Locale.ROOT);
        if (words.isEmpty() || words.length() > LONGEST || words.chars().noneMatch(Character::isLetterOrDigit)) {
            return List.of();
        }
        var text = new Text(words, number(asked), transponder(asked));
        var animals = new LinkedHashMap<UUID, Animal>();
        Stream.of(numbered(by, text), identified(by, text), labelled(by, text))
                .flatMap(List::stream)
                .forEach(animal -> animals.putIfAbsent(animal.id, animal));
        return views.of(by, sight.seen(by, List.copyOf(animals.values()))).stream()
                .flatMap(view -> text.in(view).stream())
                .sorted(Comparator.comparing((Found found) -> !found.exact())
                        .thenComparing(Found::by)
                        .thenComparing(
                                found -> StudbookNumber.parse(found.animal().number())))
                .limit(limit)
                .toList();
    }

    private static @Nullable String number(String asked) {
        try {
            return StudbookNumber.parse(asked).toString();
        } catch (IllegalArgumentException e) {
            return null; // a part of one, or something else
        }
    }

    private static @Nullable String transponder(String asked) {
        try {
            return Transponder.parse(asked).code();
        } catch (IllegalArgumentException e) {
            return null;
        }
    }

    private List<Animal> numbered(Standing by, Text text) {
        return read(
                "select a from Animal a where a.populationId = :population and a.serial > 0"
                        + " and (lower(a.number) like :part or a.number = :number or a.serial = :serial)",
                by,
                text,
                FieldGroup.IDENTITY,
                Map.of("serial", text.serial(), "number", text.number() == null ? "" : text.number()),
                " order by case when a.serial = :serial then 0 else 1 end, a.nodeCode, a.serial");
    }

    private List<Animal> identified(Standing by, Text text) {
        return read(
                "select a from Identifier i, Animal a where i.populationId = :population and a.populationId = i.populationId"
                        + " and a.id = i.animalId and (lower(i.value) like :part or i.value = :code)"
                        + " and (i.collectionId is null or i.collectionId in :own)",
                by,
                text,
                FieldGroup.MARKS_AND_PHOTOS,
                Map.of("code", text.code(), "own", keepers.collectionIds(by)),
                " order by a.nodeCode, a.serial");
    }

    private List<Animal> labelled(Standing by, Text text) {
        return read(
                "select a from Photo p, Animal a where p.populationId = :population and a.populationId = p.populationId"
                        + " and a.id = p.animalId and p.label is not null and lower(p.label) like :part",
                by,
                text,
                FieldGroup.MARKS_AND_PHOTOS,
                Map.of(),
                " order by a.nodeCode, a.serial");
    }

    private List<Animal> read(
            String query, Standing by, Text text, FieldGroup shown, Map<String, Object> more, String order) {
        ListCondition condition =
                Consents.condition(consents.audience(by), Purpose.PEDIGREE_VIEW, shown, Action.READ, clock.instant());
        var parameters = new HashMap<String, Object>(more);
        parameters.putAll(condition.parameters());
        parameters.put("population", by.populationId());
        parameters.put("part", text.part());
        var read = entities.createQuery(
                query + " and " + condition.jpql("a.collectionId", "a.ownerCollectionId", "a.id") + order,
                Animal.class);
        parameters.forEach(read::setParameter);
        return read.setMaxResults(MOST_READ).getResultList();
    }

    /**
     * What was asked for.
     *
     * @param words in lower case
     * @param number the studbook number that it is; null when it is none
     * @param transponder likewise
     */
    private record Text(
            String words, @Nullable String number, @Nullable String transponder) {
        private static final int MOST_DIGITS = 12;

        /** As LIKE takes it. */
        String part() {
            return "%" + words.replace("\\", "\\\\").replace("%", "\\%").replace("_", "\\_") + "%";
        }

        /** People say the serial alone; 0 is none. */
        long serial() {
            return words.matches("[0-9]{1,%d}".formatted(MOST_DIGITS)) ? Long.parseLong(words) : 0;
        }

        String code() {
            return transponder == null ? "" : transponder;
        }

        /** The best of what is shown; empty where what was found is not shown. */
        Optional<Found> in(AnimalView view) {
            var finds = new ArrayList<Found>();
            if (view.number().equals(number)
                    || StudbookNumber.parse(view.number()).serial() == serial()) {
                finds.add(new Found(view, By.NUMBER, view.number(), true));
            } else if (holds(view.number())) {
                finds.add(new Found(view, By.NUMBER, view.number(), false));
            }
            var held = view.held();
            if (held != null) {
                held.identifiers()
                        .forEach(identifier -> identifier(view, identifier).ifPresent(finds::add));
                held.photos().stream()
                        .map(PhotoView::label)
                        .filter(label -> label != null && holds(label))
                        .forEach(label -> finds.add(new Found(view, By.PHOTO_LABEL, label, false)));
            }
            return finds.stream()
                    .min(Comparator.comparing((Found found) -> !found.exact()).thenComparing(Found::by));
        }

        private Optional<Found> identifier(AnimalView view, IdentifierView identifier) {
            var by =
                    switch (identifier.kind()) {
                        case Identifier.TRANSPONDER -> By.TRANSPONDER;
                        case Identifier.OWN_REFERENCE -> By.OWN_REFERENCE;
                        default -> By.MARK;
                    };
            var value = identifier.value();
            boolean exact = value.toLowerCase(Locale.ROOT).equals(words) || value.equals(transponder);
            return exact || holds(value) ? Optional.of(new Found(view, by, value, exact)) : Optional.empty();
        }

        private boolean holds(String value) {
            return value.toLowerCase(Locale.ROOT).contains(words);
        }
    }
}
