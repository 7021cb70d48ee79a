package org.demebook.web.pairing;

import java.text.DecimalFormat;
import java.text.DecimalFormatSymbols;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import org.demebook.ancestry.FigureRange;
import org.demebook.planning.PairingsView;
import org.demebook.planning.PairingsView.Arrival;
import org.demebook.planning.PairingsView.Excluded;
import org.demebook.planning.PairingsView.Kept;
import org.demebook.planning.PairingsView.Pairing;
import org.jspecify.annotations.Nullable;

/**
 * Partners for one animal, as a page shows them.
 *
 * @param geneDiversity of the living animals now
 * @param meanKinship likewise
 * @param own what is told of the animal itself
 * @param tooLate whether a quarantine that begins today is not over on the day
 * @param all false where more partners than these may be asked for
 */
public record Partners(
        String animal,
        @Nullable Double geneDiversity,
        @Nullable Double meanKinship,
        @Nullable Own own,
        List<Partner> partners,
        List<Excluded> excluded,
        @Nullable Arrival arrival,
        boolean tooLate,
        boolean throughAncestorsNotShown,
        boolean all) {
    private static final double SAME = 1e-12;

    /**
     * @param meanKinship with the living animals
     * @param rare it is lower than that of all
     * @param known the share of its ancestry that is known, in [0, 1]
     */
    public record Own(double meanKinship, boolean rare, double known) {}

    /**
     * @param number of the partner
     * @param fraction the inbreeding of the young as a fraction, where it is one
     * @param worst what it would be if all unknown parents were full siblings; null where none is unknown
     * @param worstFraction likewise
     * @param range over sires that are one of several
     * @param after gene diversity if as many young are kept as does most good
     * @param fallsFrom from so many young on it is lower than now; 0: of none that was looked at
     */
    public record Partner(
            String number,
            String dam,
            String sire,
            @Nullable String keptBy,
            double inbreeding,
            @Nullable String fraction,
            @Nullable Double worst,
            @Nullable String worstFraction,
            @Nullable FigureRange range,
            double meanKinship,
            boolean rare,
            double known,
            int keep,
            double now,
            double after,
            int fallsFrom,
            List<Kept> kept,
            List<String> doubtful,
            List<String> notes) {

        public boolean isUnrelated() {
            return inbreeding <= SAME;
        }

        public boolean isAncestryKnown() {
            return known >= 1 - SAME;
        }

        /** What the young that are kept change of gene diversity. */
        public String gain(Locale locale) {
            var format = new DecimalFormat("+0.0000;-0.0000", DecimalFormatSymbols.getInstance(locale));
            return format.format(after - now);
        }

        public String doubtfulNumbers() {
            return String.join(", ", doubtful);
        }

        /** Whether its keeper is another than the reader. */
        public boolean isOfOthers() {
            return keptBy != null;
        }
    }

    static Partners of(PairingsView view, int limit, LocalDate today) {
        var animal = Objects.requireNonNull(view.animal());
        double all = view.meanKinship() == null ? 0 : view.meanKinship();
        return new Partners(
                animal,
                view.geneDiversity(),
                view.meanKinship(),
                view.pairings().stream()
                        .findFirst()
                        .map(pair -> pair.dam().number().equals(animal) ? pair.dam() : pair.sire())
                        .map(own -> new Own(own.meanKinship(), own.meanKinship() < all, own.knownAncestry()))
                        .orElse(null),
                view.pairings().stream().map(pair -> partner(animal, pair, all)).toList(),
                view.excluded(),
                view.arrival(),
                view.arrival() != null && view.arrival().latestOn().isBefore(today),
                Boolean.TRUE.equals(view.throughAncestorsNotShown()),
                view.pairings().size() < limit);
    }

    private static Partner partner(String animal, Pairing pair, double meanKinshipOfAll) {
        var partner = pair.dam().number().equals(animal) ? pair.sire() : pair.dam();
        double now = pair.kept().get(0).geneDiversity();
        return new Partner(
                partner.number(),
                pair.dam().number(),
                pair.sire().number(),
                partner.keptBy(),
                pair.inbreedingOfYoung(),
                Fractions.of(pair.inbreedingOfYoung()),
                pair.ifUnknownAreSiblings(),
                Fractions.of(pair.ifUnknownAreSiblings()),
                pair.bySire(),
                partner.meanKinship(),
                partner.meanKinship() < meanKinshipOfAll,
                partner.knownAncestry(),
                pair.keep(),
                now,
                pair.kept().get(pair.keep()).geneDiversity(),
                pair.kept().stream()
                        .filter(kept -> kept.young() > pair.keep() && kept.geneDiversity() < now - SAME)
                        .mapToInt(Kept::young)
                        .findFirst()
                        .orElse(0),
                pair.kept(),
                pair.doubtfulSiresOf(),
                pair.notes());
    }
}
