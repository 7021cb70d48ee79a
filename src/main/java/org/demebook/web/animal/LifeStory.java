package org.demebook.web.animal;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Stream;
import org.demebook.breeding.IntroductionView;
import org.demebook.diary.CareRecord;
import org.demebook.diary.CareRecord.HealthNote;
import org.demebook.diary.CareRecord.HealthTest;
import org.demebook.diary.CareRecord.Meal;
import org.demebook.diary.CareRecord.Measures;
import org.demebook.diary.CareRecord.Move;
import org.demebook.diary.CareRecord.Quarantine;
import org.demebook.diary.CareRecord.Shed;
import org.demebook.diary.Diary;
import org.demebook.notation.RoughDate;
import org.demebook.plot.Caption;
import org.demebook.plot.Dates;
import org.demebook.plot.Lifeline;
import org.demebook.plot.Lifeline.Event;
import org.demebook.plot.Lifeline.Lane;
import org.demebook.plot.Mark;
import org.demebook.plot.Name;
import org.demebook.registry.AnimalView;
import org.demebook.web.Visit;
import org.jspecify.annotations.Nullable;

/** The life of an animal as lanes along time, of what the one who looks may see. */
record LifeStory(AnimalView animal, Visit visit, AnimalMessages words) {

    Lifeline told(LocalDate until, List<Brood> young, Diary diary, List<IntroductionView> together) {
        var lanes = Stream.of(
                        lane(words.laneBirth(), Mark.DIAMOND, birthAndDeath()),
                        lane(words.laneYoung(), Mark.CIRCLE, births(young)),
                        lane(words.laneTogether(), Mark.SQUARE, met(together)),
                        lane(words.laneSheds(), Mark.TRIANGLE, of(diary, Shed.class, this::shed)),
                        condensed(words.laneMeals(), of(diary, Meal.class, meal -> on(meal, words.laneMeals()))),
                        condensed(words.laneMasses(), of(diary, Measures.class, one -> on(one, words.laneMasses()))),
                        lane(words.laneHealth(), Mark.CROSS, health(diary)),
                        lane(words.laneMoves(), Mark.STROKE, moves(diary)))
                .filter(lane -> !lane.events().isEmpty())
                .toList();
        var caption =
                new Caption("life", words.lifeCaption(), words.lifeDescription(), words.asList(), words.lifeNothing());
        return Lifeline.of(caption, lanes, until, dates(visit), words::times);
    }

    static Dates dates(Visit visit) {
        return new Dates(
                visit::day,
                month -> visit.day(RoughDate.ofMonth(month.getYear(), month.getMonth())),
                year -> Integer.toString(year.getYear()));
    }

    private static Lane lane(String name, Mark mark, List<Event> events) {
        return new Lane(
                name,
                mark,
                false,
                events.stream().sorted(Comparator.comparing(Event::on)).toList());
    }

    private static Lane condensed(String name, List<Event> events) {
        return new Lane(name, Mark.STROKE, true, events);
    }

    private List<Event> birthAndDeath() {
        var events = new ArrayList<Event>();
        add(events, animal.born(), words.eventBorn());
        if (animal.held() != null) {
            add(events, animal.held().died(), words.eventDied());
        }
        return events;
    }

    /** A day that is known roughly is told as the days that it may have been; one open to a side by the day that is named. */
    private void add(List<Event> events, @Nullable RoughDate date, String what) {
        if (date != null) {
            events.add(event(date, Name.of(what + " " + visit.day(date))));
        }
    }

    private static Event event(RoughDate date, Name what) {
        var first = date.earliest() == null ? date.latest() : date.earliest();
        var last = date.latest() == null ? first : date.latest();
        return new Event(first, first.equals(last) ? null : last, what);
    }

    private List<Event> births(List<Brood> young) {
        var events = new ArrayList<Event>();
        for (var brood : young) {
            if (brood.born() != null) {
                var other = brood.otherParent();
                var count = words.youngCount(brood.young().size());
                events.add(event(
                        brood.born(),
                        other == null
                                ? Name.of(count)
                                : new Name(count + " " + words.with() + " " + other, address(other))));
            }
        }
        return events;
    }

    private List<Event> met(List<IntroductionView> together) {
        return together.stream()
                .map(one -> {
                    var other = one.female().equals(animal.number()) ? one.male() : one.female();
                    var until = one.untilOn() == null ? visit.getToday() : one.untilOn();
                    return new Event(
                            one.fromOn(),
                            until.isAfter(one.fromOn()) ? until : null,
                            new Name(words.with() + " " + other, address(other)));
                })
                .toList();
    }

    private String address(String number) {
        return visit.getBase() + "/animals/" + number;
    }

    private Event shed(Shed shed) {
        return on(
                shed,
                shed.complete() == null ? words.shedPlain() : shed.complete() ? words.shedWhole() : words.shedPieces());
    }

    private List<Event> health(Diary diary) {
        var events = new ArrayList<Event>();
        events.addAll(of(
                diary,
                HealthTest.class,
                test -> on(test, words.eventTest(test.agent(), words.testResult(test.result())))));
        events.addAll(of(diary, HealthNote.class, note -> lasting(note.on(), note.endedOn(), note.text())));
        events.addAll(of(
                diary,
                Quarantine.class,
                quarantine -> lasting(quarantine.from(), quarantine.endedOn(), words.eventQuarantine())));
        return events;
    }

    private Event lasting(LocalDate from, @Nullable LocalDate ended, String what) {
        var until = ended == null ? visit.getToday() : ended;
        return new Event(from, until.isAfter(from) ? until : null, Name.of(what));
    }

    private List<Event> moves(Diary diary) {
        return of(diary, Move.class, move -> on(move, words.eventMove(move.place())));
    }

    private static Event on(CareRecord record, String what) {
        return new Event(record.on(), null, Name.of(what));
    }

    private static <R extends CareRecord> List<Event> of(Diary diary, Class<R> kind, Function<R, Event> event) {
        return diary.records().stream()
                .filter(kind::isInstance)
                .map(kind::cast)
                .map(event)
                .toList();
    }
}
