package org.demebook.sheet;

import java.io.BufferedWriter;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;

/**
 * Writes a large sheet to try how long an import takes; the same number of rows gives the same bytes.
 *
 * <p>Sixty years of a managed population: founders in the first three, then litters of three to seven out of the animals
 * of three to eight years of age; one young in ten has two candidate sires, half have a transponder, some have notes. The
 * rows are shuffled, so that most young stand before one of their parents.
 */
public final class LargeSheet {
    private static final int FIRST_YEAR = 1966;
    private static final int YEARS = 60;

    private LargeSheet() {}

    /** Arguments: number of rows, file to write. */
    public static void main(String[] arguments) throws IOException {
        var rows = rows(Integer.parseInt(arguments[0]));
        try (var out = new PrintWriter(new BufferedWriter(Files.newBufferedWriter(Path.of(arguments[1]))))) {
            out.print("id,dam,sire,sex,born,origin,source,transponders,notes\r\n");
            rows.forEach(row -> out.print(row + "\r\n"));
        }
    }

    static List<String> rows(int count) {
        var random = new Random(7);
        var rows = new ArrayList<String>(count);
        var females = new ArrayList<List<String>>();
        var males = new ArrayList<List<String>>();
        for (int year = 0; year < YEARS; year++) {
            females.add(new ArrayList<>());
            males.add(new ArrayList<>());
            int until = (int) ((long) count * (year + 1) / YEARS);
            while (rows.size() < until) {
                int young = Math.min(3 + random.nextInt(5), until - rows.size());
                var parents = year < 3 ? ",," : parents(females, males, year, random);
                var born = "%d-%02d-%02d".formatted(FIRST_YEAR + year, 5 + random.nextInt(4), 1 + random.nextInt(28));
                for (int i = 0; i < young; i++) {
                    var female = random.nextBoolean();
                    var id = "%s%d".formatted(female ? "F" : "M", rows.size() + 1);
                    (female ? females : males).get(year).add(id);
                    rows.add(String.join(
                            ",",
                            id,
                            parents.substring(0, parents.length() - 1),
                            female ? "f" : "m",
                            born,
                            year < 3 ? "wc,W" : "cb,F",
                            random.nextBoolean() ? "981%012d".formatted(rows.size()) : "",
                            random.nextInt(5) == 0 ? "\"calm, eats well\"" : ""));
                }
            }
        }
        Collections.shuffle(rows, random);
        return rows;
    }

    /** Dam and sire, each with the comma behind it. */
    private static String parents(List<List<String>> females, List<List<String>> males, int year, Random random) {
        var sire = one(males, year, random);
        if (random.nextInt(10) == 0) {
            var other = one(males, year, random);
            sire = other.equals(sire) ? sire : "one of " + sire + ":0.7|" + other + ":0.3";
        }
        return one(females, year, random) + "," + sire + ",";
    }

    private static String one(List<List<String>> bornIn, int year, Random random) {
        var cohort = bornIn.get(Math.max(0, year - 3 - random.nextInt(6)));
        return cohort.get(random.nextInt(cohort.size()));
    }
}
