package org.demebook.web.animal;

import com.github.benmanes.caffeine.cache.Cache;
import com.github.benmanes.caffeine.cache.Caffeine;
import io.quarkus.runtime.StartupEvent;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Inject;
import org.demebook.ancestry.ChartedAncestry;
import org.demebook.chart.AncestryChart;
import org.demebook.chart.Drawing;
import org.demebook.chart.Wording;
import org.demebook.web.Pages;
import org.demebook.web.Preferences;
import org.demebook.web.Visit;

/** Draws ancestry charts, and keeps those that were drawn last for who may see the same and reads alike. */
@ApplicationScoped
class AncestryCharts {
    private static final int KEPT = 300; // some 50 kB each

    private record Drawn(
            Object basis,
            String population,
            String number,
            int generations,
            Preferences.Language language,
            Preferences.Dates dates) {}

    @Inject
    Visit visit;

    @Inject
    Pages pages;

    private final Cache<Drawn, Drawing> drawings =
            Caffeine.newBuilder().maximumSize(KEPT).build();

    Drawing of(ChartedAncestry charted) {
        var preferences = visit.getPreferences();
        var ancestry = charted.ancestry();
        var key = new Drawn(
                charted.basis(),
                String.valueOf(visit.getPopulation()),
                ancestry.animal().number(),
                ancestry.generations(),
                preferences.language(),
                preferences.dates());
        return drawings.get(key, drawn -> AncestryChart.draw(AncestryFigures.of(charted, visit), words()));
    }

    private Wording words() {
        return new ChartWords(pages.words(PedigreeMessages.class), pages.words(AnimalMessages.class));
    }

    private record ChartWords(PedigreeMessages words, AnimalMessages animal) implements Wording {
        @Override
        public String title(String askedName) {
            return words.ancestryOf(askedName);
        }

        @Override
        public String description(int animals, int rows) {
            return words.chartDescription(animals, rows);
        }

        @Override
        public String female() {
            return words.femaleSign();
        }

        @Override
        public String male() {
            return words.maleSign();
        }

        @Override
        public String sexUnknown() {
            return words.sexUnknownSign();
        }

        @Override
        public String dead() {
            return words.deadSign();
        }

        @Override
        public String founder() {
            return words.founderSign();
        }

        @Override
        public String asked() {
            return words.askedSign();
        }

        @Override
        public String withheld() {
            return words.withheldSign();
        }

        @Override
        public String unknownParent() {
            return words.unknownSign();
        }

        @Override
        public String dam() {
            return animal.dam();
        }

        @Override
        public String sire() {
            return animal.sire();
        }

        @Override
        public String possibleSire() {
            return words.possibleSire();
        }

        @Override
        public String parentsRelated() {
            return words.relatedSign();
        }

        @Override
        public String asAbove() {
            return words.asAbove();
        }
    }

    /** The first chart costs seconds that nobody should wait for. */
    void warmUp(@Observes StartupEvent started) {
        var warming = new Thread(AncestryChart::warmUp, "first ancestry chart");
        warming.setDaemon(true);
        warming.setPriority(Thread.MIN_PRIORITY);
        warming.start();
    }
}
