package org.demebook.programme;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.demebook.ancestry.Snapshot;
import org.demebook.kinship.Pedigree;
import org.demebook.notation.Sex;
import org.demebook.planning.SeasonField;
import org.demebook.season.Course;
import org.demebook.season.Litter;
import org.demebook.season.LitterChance;
import org.demebook.season.Living;
import org.demebook.taxon.TaxonProfile;

/**
 * The pool that an outlook begins with, as its asker may know it: who may breed when, and how long each is reckoned to stay. Animals whose
 * keepers do not let them be planned with count, and never breed.
 */
final class PoolToday {
    /** Of later seasons: common practice, no source. */
    private static final int LITTERS_OF_MALE = 2;

    private static final double DAYS_OF_YEAR = 365.25;

    final Pedigree pedigree;
    final List<Living> living = new ArrayList<>();
    final List<Litter> litters;
    final Course course;
    private final SeasonField field;
    private final Snapshot snapshot;
    private final OutlookQuestion question;
    private final double breedsUntilAge;

    /**
     * @param lost animals that are taken to be gone
     * @param founders females and males that are imagined; they stand in the plan as {@link Stage#id} has them
     * @param firstImagined their first row there
     */
    PoolToday(
            SeasonField field,
            TaxonProfile.Breeding breeding,
            OutlookQuestion question,
            PlanDocument plan,
            Set<UUID> lost,
            int[] founders,
            int firstImagined) {
        this.field = field;
        this.question = question;
        snapshot = field.snapshot();
        breedsUntilAge = question.breedsUntilAge() == null
                ? breeding.daysOfAgeAtLastLitter() / DAYS_OF_YEAR
                : question.breedsUntilAge();
        course = course(breeding, plan, lost, founders[0] + founders[1]);
        var breedsIn = breedsIn(breeding);
        for (int row : snapshot.living()) {
            if (!lost.contains(snapshot.id(row))) {
                living.add(new Living(
                        row,
                        snapshot.sex(row) == Sex.FEMALE,
                        breedsIn.getOrDefault(row, Living.NEVER),
                        seasonsLeft(row)));
            }
        }
        pedigree = withFounders(founders);
        litters = litters(plan, firstImagined);
    }

    private Course course(TaxonProfile.Breeding breeding, PlanDocument plan, Set<UUID> lost, int founders) {
        double daysBetween = question.yearsBetween() * DAYS_OF_YEAR;
        int matures = Math.max(1, (int) Math.ceil(breeding.daysOfAgeToBreed() / daysBetween));
        int stays = Math.max(matures, (int) Math.floor(breedsUntilAge / question.yearsBetween()));
        long alive = snapshot.living().length - lost.size() + founders;
        return new Course(
                question.yearsBetween(),
                question.litters() == null ? plan.litters().size() : question.litters(),
                chance(plan),
                matures,
                stays,
                Math.max(0, (int) Math.ceil(breeding.daysBetweenLittersUsual() / daysBetween) - 1),
                LITTERS_OF_MALE,
                Math.max(1e-9, plan.maximumInbreeding().value()),
                question.places() == null ? (int) Math.max(1, alive) : question.places());
    }

    /** All litters to come are reckoned with alike, with as many young as those of the plan on the mean; without any, one young of each. */
    private static LitterChance chance(PlanDocument plan) {
        double born = plan.chanceOfLitter().value();
        double young = plan.litters().stream()
                .mapToDouble(litter -> litter.young().value())
                .average()
                .orElse(born);
        return new LitterChance(born, (int) Math.max(1, Math.round(young / born)), 1);
    }

    /** By row, of those who may be planned with, seasons until they may have a litter. */
    private Map<Integer, Integer> breedsIn(TaxonProfile.Breeding breeding) {
        var breedsIn = new HashMap<Integer, Integer>();
        field.females().forEach(candidate -> breedsIn.put(candidate.row(), 0));
        field.males().forEach(candidate -> breedsIn.put(candidate.row(), 0));
        for (var hindered : field.hindered()) {
            int seasons =
                    switch (hindered.hindrance()) {
                        case ON_HOLD -> Living.NEVER;
                        case TOO_YOUNG -> seasonsToMature(hindered.row(), breeding.daysOfAgeToBreed());
                        case RESTS, TEST -> 1;
                    };
            breedsIn.put(hindered.row(), seasons);
        }
        return breedsIn;
    }

    private int seasonsToMature(int row, int daysOfAge) {
        var born = snapshot.bornEarliest(row);
        double days = born == null ? 1 : ChronoUnit.DAYS.between(field.pairOn(), born.plusDays(daysOfAge));
        return Math.max(1, (int) Math.ceil(days / (question.yearsBetween() * DAYS_OF_YEAR)));
    }

    /** Of an animal whose birthday is not known to the asker, half of what a young would stay. */
    private int seasonsLeft(int row) {
        LocalDate born = snapshot.isShown(row) ? snapshot.bornLatest(row) : null;
        if (born == null) {
            return Math.max(1, course.stays() / 2);
        }
        double age = ChronoUnit.DAYS.between(born, field.pairOn()) / DAYS_OF_YEAR;
        double left = (breedsUntilAge - age) / question.yearsBetween();
        return (int) Math.max(1, Math.ceil(left));
    }

    private Pedigree withFounders(int[] founders) {
        int all = founders[0] + founders[1];
        if (all == 0) {
            return snapshot.pedigree();
        }
        var builder = snapshot.pedigree().extended(all);
        for (int i = 0; i < all; i++) {
            builder.founder(snapshot.size() + i);
            living.add(new Living(snapshot.size() + i, i < founders[0], 0, course.stays()));
        }
        return builder.build();
    }

    /** Those whose two animals are still there and may be seen. */
    private List<Litter> litters(PlanDocument plan, int firstImagined) {
        var here = new HashMap<UUID, Integer>();
        for (var animal : living) {
            if (animal.row() >= snapshot.size()) {
                here.put(new UUID(0, (long) firstImagined + animal.row() - snapshot.size()), animal.row());
            } else if (snapshot.isShown(animal.row()) && animal.breedsIn() != Living.NEVER) {
                here.put(snapshot.id(animal.row()), animal.row());
            }
        }
        var found = new ArrayList<Litter>();
        for (var litter : plan.litters()) {
            var dam = here.get(litter.damId());
            var sire = here.get(litter.sireId());
            if (dam != null && sire != null) {
                found.add(new Litter(dam, sire, course.chance()));
            }
        }
        return found;
    }

    Snapshot snapshot() {
        return snapshot;
    }

    /** What is taken for granted, in words. */
    List<String> assumptions() {
        var chance = course.chance();
        return List.of(
                "From one season to the next it is %s. After this one each has %s, fewer where there are not enough animals that may breed."
                        .formatted(count(course.years(), "year"), count(course.litters(), "litter")),
                "Of 100 pairings %s have a litter, of which %s kept; so it is in this season, too."
                        .formatted(
                                plain(Math.round(100 * chance.born())),
                                chance.young() == 1 ? "1 young is" : chance.young() + " young are"),
                "Animals breed from the %s season after that of their birth and leave after %s; one whose birthday you do not see stays for %s. Females %s."
                        .formatted(
                                ordinal(course.matures()),
                                count(course.stays(), "season"),
                                count(Math.max(1, course.stays() / 2), "season"),
                                course.rests() == 0
                                        ? "may have a litter in every season"
                                        : "rest for %s after a litter".formatted(count(course.rests(), "season"))),
                "There is room for %s; the oldest leave first. Nobody dies before."
                        .formatted(count(course.places(), "animal")),
                "Animals that their keepers do not let you plan with count for as long as they stay, and never breed.",
                "Limits of collections and distances hold for this season's plan, not for later ones.");
    }

    private static String ordinal(int number) {
        return switch (number) {
            case 1 -> "first";
            case 2 -> "second";
            case 3 -> "third";
            default -> number + "th";
        };
    }

    static String count(double number, String one) {
        return plain(number) + " " + one + (number == 1 ? "" : "s");
    }

    static String plain(double number) {
        return number == Math.rint(number) ? Long.toString((long) number) : Double.toString(number);
    }
}
