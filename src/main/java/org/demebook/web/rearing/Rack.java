package org.demebook.web.rearing;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.inject.Named;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.demebook.diary.CareRecordView;
import org.demebook.diary.CareRecords;
import org.demebook.diary.Diary;
import org.demebook.diary.StatedCareRecord;
import org.demebook.keeper.Standing;
import org.demebook.registry.Animals;
import org.demebook.registry.KnownAnimals.KnownAnimal;
import org.demebook.web.Visit;
import org.demebook.web.rearing.Written.Entries;
import org.jspecify.annotations.Nullable;

/**
 * What pages at the rack have in common: a tap writes something down, the page after it says what, and takes it back. Templates
 * reach it as {@code inject:rack}.
 */
@Named("rack")
@ApplicationScoped
public class Rack {
    /** The parameter of an address that says what was just written. */
    public static final String WRITTEN = "written";

    @Inject
    Visit visit;

    @Inject
    CareRecords careRecords;

    @Inject
    Animals animals;

    /** Where a form of the population is sent, with a fresh key: it has one effect however often it is sent. */
    public String to(String path) {
        return visit.getBase() + path + "?once=" + visit.getOnce();
    }

    /** The page of a care record. */
    public String of(CareRecordView record) {
        return visit.getBase() + "/care-records/" + record.id();
    }

    /** The page of all care records of an animal. */
    public String all(String number) {
        return "%s/animals/%s/care-records".formatted(visit.getBase(), number);
    }

    /**
     * Writes a tap down. Of many animals only for those of which nothing of the kind was written today: those were looked at one
     * by one before.
     *
     * @return the address to go on with
     */
    String tapped(Standing by, Tap tap, List<String> numbers, String back) {
        var today = visit.getToday();
        var meant = numbers.size() == 1 ? numbers : notYet(by, tap, numbers);
        var records = new ArrayList<StatedCareRecord>();
        meant.forEach(number -> records.add(tap.of(number, today)));
        return records.isEmpty()
                ? back
                : after(back, careRecords.recordAll(by, records).records());
    }

    private List<String> notYet(Standing by, Tap tap, List<String> numbers) {
        var today = visit.getToday();
        var known = animals.known(by, numbers, List.of(), false).byNumber();
        var diaries = careRecords.diaries(
                by, known.values().stream().map(animal -> animal.view().id()).toList());
        return numbers.stream()
                .filter(number -> !diary(known.get(number), diaries).has(record -> tap.isIn(record, today)))
                .toList();
    }

    private static Diary diary(@Nullable KnownAnimal animal, Map<UUID, Diary> diaries) {
        return animal == null ? Diary.of() : diaries.getOrDefault(animal.view().id(), Diary.of());
    }

    /** The address of a page that says what was written, and offers to take it back. */
    static String after(String back, List<CareRecordView> records) {
        return back + (back.contains("?") ? "&" : "?") + WRITTEN + "=" + Entries.of(records);
    }

    /** What the address says was written, as far as it still stands; the page goes on with {@code back}. */
    public Optional<Written> written(Standing by, @Nullable String written, String back) {
        var entries = Entries.parse(written);
        if (entries == null) {
            return Optional.empty();
        }
        var records = careRecords.written(by, entries.from(), entries.until());
        return records.isEmpty()
                ? Optional.empty()
                : Optional.of(new Written(entries.from(), entries.until(), records, back));
    }

    /** Where a form says that one goes on, if it is a page of the population; else the page of today. */
    String back(@Nullable String address) {
        var base = visit.getBase() + "/";
        return address != null && address.startsWith(base) && address.matches("[\\w/.:?&=%~*-]+")
                ? address
                : base + "today";
    }
}
