package org.demebook.plot;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.TreeMap;
import java.util.function.IntFunction;
import java.util.stream.LongStream;
import org.jspecify.annotations.Nullable;

/**
 * What happened to one animal, a lane for each kind of event, with the same as a list.
 *
 * <p>Lanes of frequent events, such as meals, tell how many there were in each week, month or year, whichever the length of the life
 * asks for.
 *
 * @param frames empty if nothing happened
 * @param entries the oldest first
 */
public record Lifeline(Caption caption, List<Frame> frames, List<Entry> entries) {

    /** A kind of event, with the mark of its events; a condensed one tells counts. */
    public record Lane(String name, Mark mark, boolean condensed, List<Event> events) {}

    /**
     * Something that happened on a day, or lasted until another.
     *
     * @param what in words, with a link to more; of a condensed lane's events it is not shown
     * @param until the last day, or null if it was of one day
     */
    public record Event(LocalDate on, @Nullable LocalDate until, Name what) {
        public Event {
            if (until != null && until.isBefore(on)) {
                throw new IllegalArgumentException(what.text() + " ends on " + until + " before it begins on " + on);
            }
        }
    }

    /**
     * A line of the list.
     *
     * @param when the day, or the week, month or year of a count; {@code machine} the same as HTML's {@code time} wants it
     */
    public record Entry(String when, String machine, String lane, Name what) {}

    /**
     * @param until the last day that is drawn: today, or the day of death; events after it are drawn too
     * @param times writes how many events there were, such as "4 times"
     */
    public static Lifeline of(
            Caption caption, List<Lane> lanes, LocalDate until, Dates dates, IntFunction<String> times) {
        var days = lanes.stream()
                .flatMap(lane -> lane.events().stream())
                .flatMapToLong(event -> LongStream.of(
                        event.on().toEpochDay(), (event.until() == null ? event.on() : event.until()).toEpochDay()))
                .summaryStatistics();
        if (days.getCount() == 0) {
            return new Lifeline(caption, List.of(), List.of());
        }
        var from = LocalDate.ofEpochDay(days.getMin());
        var to = LocalDate.ofEpochDay(Math.max(days.getMax(), until.toEpochDay()));
        var period = Period.forDays(ChronoUnit.DAYS.between(from, to));
        var lanesPicture = new Lanes(lanes, from, to, period, dates);
        return new Lifeline(
                caption,
                List.of(lanesPicture.frame(Size.WIDE), lanesPicture.frame(Size.NARROW)),
                entries(lanes, period, dates, times));
    }

    private static List<Entry> entries(List<Lane> lanes, Period period, Dates dates, IntFunction<String> times) {
        record Dated(LocalDate on, Entry entry) {}
        var dated = new ArrayList<Dated>();
        for (var lane : lanes) {
            if (lane.condensed()) {
                counts(lane, period)
                        .forEach((begin, count) -> dated.add(new Dated(
                                begin,
                                new Entry(
                                        period.write(begin, dates),
                                        period.machine(begin),
                                        lane.name(),
                                        Name.of(times.apply(count))))));
                continue;
            }
            for (var event : lane.events()) {
                var when = dates.day().apply(event.on());
                var entry = new Entry(
                        event.until() == null
                                ? when
                                : when + " – " + dates.day().apply(event.until()),
                        event.on().toString(),
                        lane.name(),
                        event.what());
                dated.add(new Dated(event.on(), entry));
            }
        }
        return dated.stream()
                .sorted(Comparator.comparing(Dated::on))
                .map(Dated::entry)
                .toList();
    }

    static TreeMap<LocalDate, Integer> counts(Lane lane, Period period) {
        var counts = new TreeMap<LocalDate, Integer>();
        lane.events().forEach(event -> counts.merge(period.begin(event.on()), 1, Integer::sum));
        return counts;
    }

    public boolean empty() {
        return frames.isEmpty();
    }
}
