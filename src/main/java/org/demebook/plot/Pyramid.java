package org.demebook.plot;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToIntFunction;
import org.demebook.plot.Table.Cell;

/**
 * Animals by age and sex: males to the left, females to the right, those of unknown sex apart and hatched; all three at one scale.
 *
 * @param frames empty if there is no animal
 */
public record Pyramid(Caption caption, List<Frame> frames, Table table) {
    private static final double ROW = 24;
    private static final double BAR = 18;
    private static final double HEAD = 30;
    private static final double BETWEEN = 14;

    /** Animals of an age. */
    public record AgeClass(String age, int males, int females, int unknown) {
        public AgeClass {
            if (males < 0 || females < 0 || unknown < 0) {
                throw new IllegalArgumentException(age + ": a count is not negative");
            }
        }
    }

    /** @param age above the names of the classes */
    public record Words(String age, String males, String females, String unknown) {}

    /** @param classes youngest first; they are drawn with the oldest on top */
    public static Pyramid of(Caption caption, List<AgeClass> classes, Numbers numbers, Words words) {
        var table = table(classes, numbers, words);
        boolean none = classes.stream().allMatch(one -> one.males() + one.females() + one.unknown() == 0);
        if (none) {
            return new Pyramid(caption, List.of(), table);
        }
        return new Pyramid(
                caption,
                List.of(frame(Size.WIDE, classes, numbers, words), frame(Size.NARROW, classes, numbers, words)),
                table);
    }

    private static Frame frame(Size size, List<AgeClass> classes, Numbers numbers, Words words) {
        double count = 0;
        double gutter = Letters.width(words.age());
        for (var one : classes) {
            gutter = Math.max(gutter, Letters.width(one.age()));
            for (int n : new int[] {one.males(), one.females(), one.unknown()}) {
                count = Math.max(count, Letters.width(numbers.write(n, 0)));
            }
        }
        gutter = Math.min(gutter, size.width * .25) + 8;
        count = Math.min(count, size.width / 6.0) + 6;
        int males = most(classes, AgeClass::males);
        int females = most(classes, AgeClass::females);
        int unknown = most(classes, AgeClass::unknown);
        double room = size.width - gutter - 2 - (unknown > 0 ? 3 * count + BETWEEN : 2 * count);
        double unit = room / (males + females + unknown);
        double middle = gutter + count + males * unit;
        double apart = middle + females * unit + count + BETWEEN;

        var canvas = new Canvas();
        var left = new Outline();
        var right = new Outline();
        var hatched = new Outline();
        var hatch = new Outline();
        for (int i = 0; i < classes.size(); i++) {
            var one = classes.get(classes.size() - 1 - i);
            double y = HEAD + i * ROW + (ROW - BAR) / 2;
            double baseline = y + BAR / 2 + 4.5;
            canvas.text("", 0, baseline, Letters.fit(one.age(), gutter - 4));
            if (one.males() > 0) {
                left.rectangle(middle - one.males() * unit, y, one.males() * unit, BAR);
                canvas.text(
                        "end",
                        middle - one.males() * unit - 4,
                        baseline,
                        Letters.fit(numbers.write(one.males(), 0), count - 6));
            }
            if (one.females() > 0) {
                right.rectangle(middle, y, one.females() * unit, BAR);
                canvas.text(
                        "",
                        middle + one.females() * unit + 4,
                        baseline,
                        Letters.fit(numbers.write(one.females(), 0), count - 6));
            }
            if (one.unknown() > 0) {
                hatched.rectangle(apart, y, one.unknown() * unit, BAR);
                hatch.hatch(apart, y, one.unknown() * unit, BAR, 5);
                canvas.text(
                        "",
                        apart + one.unknown() * unit + 4,
                        baseline,
                        Letters.fit(numbers.write(one.unknown(), 0), count - 6));
            }
        }
        double height = HEAD + classes.size() * ROW + 4;
        canvas.shape("bar males", left);
        canvas.shape("bar females", right);
        canvas.shape("bar unknown", hatched);
        canvas.shape("hatch", hatch);
        canvas.shape("axis", new Outline().line(middle, HEAD - 4, middle, height - 2));
        if (unknown > 0) {
            canvas.shape("axis", new Outline().line(apart, HEAD - 4, apart, height - 2));
        }
        drawHeads(canvas, size, words, middle, unknown > 0 ? apart : size.width);
        return canvas.frame(size.css, size.width, height);
    }

    /** Each over its part; the last ends at the edge if it is too long to begin over its part. */
    private static void drawHeads(Canvas canvas, Size size, Words words, double middle, double apart) {
        double half = (middle - 12) / 2;
        var age = Letters.fit(words.age(), half);
        canvas.text("name", 0, 14, age);
        canvas.text("name end", middle - 6, 14, Letters.fit(words.males(), middle - 18 - Letters.width(age)));
        if (apart >= size.width) {
            canvas.text("name", middle + 6, 14, Letters.fit(words.females(), size.width - middle - 6));
            return;
        }
        var females = Letters.fit(words.females(), (size.width - middle) / 2);
        canvas.text("name", middle + 6, 14, females);
        double begin = middle + 6 + Letters.width(females) + 8;
        var unknown = Letters.fit(words.unknown(), size.width - begin);
        double start = Math.max(begin, Math.min(apart, size.width - Letters.width(unknown)));
        canvas.text("name", start, 14, unknown);
    }

    private static int most(List<AgeClass> classes, ToIntFunction<AgeClass> count) {
        return classes.stream().mapToInt(count).max().orElse(0);
    }

    private static Table table(List<AgeClass> classes, Numbers numbers, Words words) {
        var rows = new ArrayList<Table.Row>();
        for (int i = classes.size() - 1; i >= 0; i--) {
            var one = classes.get(i);
            rows.add(new Table.Row(
                    Name.of(one.age()),
                    List.of(
                            Cell.number(numbers.write(one.males(), 0)),
                            Cell.number(numbers.write(one.females(), 0)),
                            Cell.number(numbers.write(one.unknown(), 0)))));
        }
        var heads = List.of(
                Cell.words(words.age()),
                Cell.number(words.males()),
                Cell.number(words.females()),
                Cell.number(words.unknown()));
        return new Table(heads, rows);
    }

    public boolean empty() {
        return frames.isEmpty();
    }
}
