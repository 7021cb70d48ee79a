package org.demebook.chart;

import java.util.List;
import java.util.stream.IntStream;
import org.demebook.chart.Figure.Sex;

/** Draws who descends from whom. */
public final class AncestryChart {
    private AncestryChart() {}

    /**
     * The chart of these animals, and its outline. Rows run from the oldest generation at the top; each animal is drawn once, each
     * link from a parent once. How many generations is the caller's choice: what is not among the figures is not drawn. The
     * same figures in the same order give the same text. Safe to call from several threads.
     *
     * <p>Takes 0.1 to 0.3 s of one core for 62 animals, which are some 1600 × 1300 pixels and 50 kB, and less than 0.1 s for 15 (measured beside
     * other work): keep it as long as the pedigree stays as it is, and draw outside transactions. On a phone three to five
     * generations are enough.
     *
     * @throws IllegalArgumentException if there is no figure, a key occurs twice, a parent is not among the figures or named
     *     twice, or somebody would be their own ancestor
     */
    public static Drawing draw(List<Figure> animals, Wording words) {
        if (animals.isEmpty()) {
            throw new IllegalArgumentException("A chart without an animal");
        }
        var couples = Couple.of(animals);
        var rows = Rows.of(animals, couples);
        var boxes = boxes(animals, couples, words);
        var chart = new SvgChart(animals, couples, boxes, Layout.of(boxes, couples, rows), words);
        var outline = OutlineWriter.write(animals, couples, words);
        var svg = chart.draw(words.title(outline.roots().get(0).name()), words.description(animals.size(), (int)
                IntStream.of(rows).distinct().count()));
        return new Drawing(svg, chart.width(), chart.height(), Legend.of(animals, couples, words), outline);
    }

    private static List<Box> boxes(List<Figure> animals, List<Couple> couples, Wording words) {
        int mostLines = animals.stream()
                .mapToInt(it -> Telling.lines(it, words).size())
                .max()
                .orElseThrow();
        return IntStream.range(0, animals.size())
                .mapToObj(animal -> Box.of(
                        animals.get(animal),
                        (int) couples.stream()
                                .filter(couple -> couple.parents().contains(animal))
                                .count(),
                        words,
                        mostLines))
                .toList();
    }

    /** Does the work that only the first chart has, one to three seconds; call it in the background at the start. */
    public static void warmUp() {
        var dam = Figure.of("dam", Sex.FEMALE);
        var sire = Figure.of("sire", Sex.MALE);
        var young = Figure.of("young", Sex.UNKNOWN).withParents("dam", "sire", false);
        var box = new Box(Box.SYMBOL, Box.SYMBOL + Box.STRIP, 0, 60, 50, List.of());
        var figures = List.of(dam, sire, young);
        var couples = Couple.of(figures);
        Layout.of(List.of(box, box, box), couples, Rows.of(figures, couples));
    }
}
