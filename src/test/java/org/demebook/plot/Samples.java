package org.demebook.plot;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.stream.IntStream;

/** Plots of Marrowfin Cay as a page would ask for them. */
final class Samples {
    static final Numbers NUMBERS = Numbers.of(Locale.ENGLISH);
    static final Dates DATES = Dates.of(Locale.ENGLISH);
    static final Measure COUNT = new Measure("Living animals", NUMBERS, 0, true);
    static final Measure DIVERSITY = new Measure("Gene diversity", NUMBERS, 4, false);
    static final Measure KINSHIP = new Measure("Kinship", NUMBERS, 3, true);
    static final Along YEARS = new Along.Whole("Year", Numbers.years(Locale.ENGLISH));
    static final Trend.Words TREND_WORDS = new Trend.Words("not known", "nine of ten simulations", "projected");
    static final Trend.Now NOW = new Trend.Now(2026, "2026");

    private Samples() {}

    static Caption caption(String id, String title) {
        return new Caption(
                id, title, title + " of Marrowfin Cay.", "The same in figures", "There is nothing to draw yet.");
    }

    static List<Name> animals(int count) {
        return IntStream.range(0, count)
                .mapToObj(i -> new Name("MC-H-" + (i + 1) + "-" + "ABCDEFGHJK".charAt(i % 10), "/animals/" + i))
                .toList();
    }

    /** Kinships of a herd bred at random from at most eight founders; what one of them has with others withheld if asked for. */
    static double[][] kinships(int count, boolean withheld) {
        var random = new Random(7);
        int founders = Math.min(8, (count + 1) / 2);
        var kinship = new double[count][count];
        for (int i = 0; i < count; i++) {
            if (i < founders) {
                kinship[i][i] = .5;
                continue;
            }
            int dam = random.nextInt(i);
            int sire = random.nextInt(i);
            for (int j = 0; j < i; j++) {
                kinship[i][j] = (kinship[dam][j] + kinship[sire][j]) / 2;
                kinship[j][i] = kinship[i][j];
            }
            kinship[i][i] = (1 + kinship[dam][sire]) / 2;
        }
        if (withheld) {
            for (int j = 0; j < count; j++) {
                kinship[count / 2][j] = Double.NaN;
                kinship[j][count / 2] = Double.NaN;
            }
        }
        return kinship;
    }

    static HeatMap heatMap(int count, boolean withheld) {
        return HeatMap.symmetric(
                caption("kinship-" + count, "Kinship"),
                animals(count),
                kinships(count, withheld),
                HeatMap.KINSHIP_STEPS,
                KINSHIP,
                new HeatMap.Words("Animal", "withheld"));
    }

    /** Gene diversity of twenty years, three of them unknown, and ten to come with an interval. */
    static Trend diversity() {
        var points = new ArrayList<Series.Point>();
        for (int year = 2006; year <= 2036; year++) {
            double value = .94 - .0021 * (year - 2006) + .006 * Math.sin(year);
            if (year == 2011 || year == 2012 || year == 2014) {
                points.add(Series.Point.missing(year));
            } else if (year > 2026) {
                double half = .0025 * (year - 2026);
                points.add(new Series.Point(year, value, value - 1.4 * half, value + half));
            } else {
                points.add(Series.Point.of(year, value));
            }
        }
        return Trend.of(
                caption("diversity", "Gene diversity, past and projected"),
                YEARS,
                DIVERSITY,
                List.of(new Series("Gene diversity", points)),
                NOW,
                TREND_WORDS);
    }

    static Trend living() {
        var names = List.of("All", "Females", "Males", "Of known parents");
        var series = new ArrayList<Series>();
        for (int i = 0; i < names.size(); i++) {
            var points = new ArrayList<Series.Point>();
            for (int year = 2006; year <= 2030; year++) {
                double all = 14 + 3.3 * (year - 2006) + 8 * Math.sin(year / 3.0);
                points.add(Series.Point.of(year, Math.rint(all * new double[] {1, .55, .4, .25}[i])));
            }
            series.add(new Series(names.get(i), points));
        }
        return Trend.of(
                caption("living", "Living animals"), YEARS, COUNT, series, new Trend.Now(2026, "today"), TREND_WORDS);
    }

    static Pyramid pyramid() {
        var classes = new ArrayList<Pyramid.AgeClass>();
        var random = new Random(3);
        for (int age = 0; age < 16; age++) {
            int most = 17 - age;
            classes.add(new Pyramid.AgeClass(
                    age == 15 ? "15 +" : age == 0 ? "under 1" : String.valueOf(age),
                    random.nextInt(most),
                    random.nextInt(most + 2),
                    age < 3 ? 8 - 2 * age + random.nextInt(4) : 0));
        }
        return Pyramid.of(
                caption("ages", "Age and sex"),
                classes,
                NUMBERS,
                new Pyramid.Words("Years", "Males", "Females", "Sex unknown"));
    }

    static Shares shares(int count) {
        var random = new Random(11);
        var weights = random.doubles(count).map(x -> x * x).toArray();
        double sum = IntStream.range(0, count).mapToDouble(i -> weights[i]).sum();
        var shares = new ArrayList<Shares.Share>();
        for (int i = 0; i < count; i++) {
            shares.add(
                    new Shares.Share(animals(count).get(i), weights[i] / sum, i % 5 == 4 ? Double.NaN : 1.0 / count));
        }
        return Shares.of(
                caption("founders-" + count, "Founder contributions"),
                shares,
                new Measure("Share", Numbers.percent(Locale.ENGLISH), 3, true),
                new Shares.Words("Founder", "Contribution", "Aimed at", "none"));
    }

    static Tradeoff tradeoff() {
        var choices = new ArrayList<Tradeoff.Choice>();
        for (int i = 0; i < 8; i++) {
            choices.add(new Tradeoff.Choice(
                    Name.of(i == 5 ? "Plan in force" : "Weight " + i),
                    .9412 - .0009 * Math.pow(7 - i, 1.6),
                    .011 + .0011 * i * i,
                    i == 5 ? Tradeoff.Kind.CHOSEN : Tradeoff.Kind.POSSIBLE));
        }
        choices.add(new Tradeoff.Choice(Name.of("What if Dov leaves"), .9335, .047, Tradeoff.Kind.OTHER));
        choices.add(new Tradeoff.Choice(Name.of("No plan goes further"), .9419, Double.NaN, Tradeoff.Kind.BOUND));
        return Tradeoff.of(
                caption("curve", "Gene diversity against inbreeding"),
                choices,
                new Measure("Gene diversity after the season", NUMBERS, 4, false),
                new Measure("Mean inbreeding of the young", NUMBERS, 3, true),
                new Tradeoff.Words(
                        "Plan", "Kind", "possible plans", "in force", "compared", "proven bound", "not computed"));
    }

    static Growth growth() {
        var random = new Random(5);
        var weighings = new ArrayList<Growth.Weighing>();
        var litter = new ArrayList<Growth.Range>();
        for (int day = 0; day <= 420; day += 14) {
            double mean = 7.4 + 48 * (1 - Math.exp(-day / 260.0));
            litter.add(new Growth.Range(day, mean * .82, mean * 1.17));
            if (day % 28 == 0) {
                weighings.add(new Growth.Weighing(day + random.nextInt(6), mean * (.88 + .1 * random.nextDouble())));
            }
        }
        return Growth.of(
                caption("growth", "Mass"),
                new Along.Whole("Age in days", NUMBERS),
                new Measure("Mass in g", NUMBERS, 1, true),
                weighings,
                litter,
                new Growth.Words("MC-H-27-K", "Littermates, least to most", "not weighed"));
    }

    static final LocalDate BORN_ON = LocalDate.of(2019, 6, 29);

    static Lifeline lifeline() {
        var random = new Random(2);
        var sheds = new ArrayList<Lifeline.Event>();
        var meals = new ArrayList<Lifeline.Event>();
        for (int day = 12; day < 2600; day += 60 + random.nextInt(50)) {
            sheds.add(event(day, "Shed, complete"));
        }
        for (int day = 10; day < 2600; day += 6 + random.nextInt(day % 365 < 90 ? 40 : 6)) {
            meals.add(event(day, "1 pink mouse"));
        }
        return Lifeline.of(
                caption("life", "Life line of MC-H-27-K"),
                List.of(
                        new Lifeline.Lane(
                                "Birth, death",
                                Mark.DIAMOND,
                                false,
                                List.of(event(0, "Born at Wren's"), event(2640, "Died"))),
                        new Lifeline.Lane(
                                "Moves",
                                Mark.SQUARE,
                                false,
                                List.of(
                                        new Lifeline.Event(
                                                BORN_ON,
                                                BORN_ON.plusDays(200),
                                                new Name("At Wren's", "/collections/wren")),
                                        new Lifeline.Event(
                                                BORN_ON.plusDays(200), BORN_ON.plusDays(2640), Name.of("At Ines's")))),
                        new Lifeline.Lane("Sheds", Mark.CIRCLE, false, sheds),
                        new Lifeline.Lane("Meals", Mark.STROKE, true, meals),
                        new Lifeline.Lane(
                                "Litters",
                                Mark.TRIANGLE,
                                false,
                                List.of(event(1100, "Litter of 9, 7 alive"), event(1830, "Litter of 12, 12 alive"))),
                        new Lifeline.Lane("Treatments", Mark.CROSS, false, List.of(event(900, "Wormed")))),
                BORN_ON.plusDays(2640),
                DATES,
                count -> count + (count == 1 ? " meal" : " meals"));
    }

    private static Lifeline.Event event(int day, String what) {
        return new Lifeline.Event(BORN_ON.plusDays(day), null, Name.of(what));
    }

    static List<Record> all() {
        return List.of(
                heatMap(8, true),
                heatMap(20, false),
                heatMap(60, true),
                diversity(),
                living(),
                pyramid(),
                shares(12),
                shares(60),
                tradeoff(),
                growth(),
                lifeline());
    }
}
