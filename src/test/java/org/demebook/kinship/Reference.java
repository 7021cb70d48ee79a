package org.demebook.kinship;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * A pedigree of {@code src/test/resources/reference} with its names. The values beside it were computed with four
 * general libraries for R, named in the README there.
 */
public record Reference(String name, Pedigree pedigree, List<String> ids, Map<String, Integer> rows) {

    static Reference read(String name) {
        var ids = new ArrayList<String>();
        var rows = new HashMap<String, Integer>();
        var lines = lines(name + ".csv");
        for (var line : lines) {
            add(line[0], ids, rows);
        }
        for (var line : lines) {
            add(line[1], ids, rows);
            add(line[2], ids, rows);
        }
        var builder = Pedigree.builder(ids.size());
        for (var line : lines) {
            tell(builder, rows, line);
        }
        for (int row = lines.size(); row < ids.size(); row++) {
            builder.founder(row);
        }
        return new Reference(name, builder.build(), ids, rows);
    }

    private static void add(String id, List<String> ids, Map<String, Integer> rows) {
        if (!id.isEmpty() && rows.putIfAbsent(id, ids.size()) == null) {
            ids.add(id);
        }
    }

    private static void tell(PedigreeBuilder builder, Map<String, Integer> rows, String[] line) {
        if (line[1].isEmpty() && line[2].isEmpty()) {
            builder.founder(rows.get(line[0]));
        } else {
            builder.young(
                    rows.get(line[0]),
                    rows.getOrDefault(line[1], Pedigree.UNKNOWN),
                    rows.getOrDefault(line[2], Pedigree.UNKNOWN));
        }
    }

    int row(String id) {
        return rows.get(id);
    }

    int[] living() {
        return lines(name + ".living.csv").stream()
                .mapToInt(line -> rows.get(line[0]))
                .toArray();
    }

    Map<String, Double> summary() {
        var values = new HashMap<String, Double>();
        lines(name + ".summary.csv").forEach(line -> values.put(line[0], Double.valueOf(line[1])));
        return values;
    }

    /** The lines of a file without its head, cut at commas. */
    public static List<String[]> lines(String file) {
        var in = Reference.class.getResourceAsStream("/reference/" + file);
        try (var reader = new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))) {
            return reader.lines()
                    .skip(1)
                    .map(line -> line.replace("\"", "").split(",", -1))
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static int[] all(Pedigree pedigree) {
        int[] rows = new int[pedigree.size()];
        Arrays.setAll(rows, row -> row);
        return rows;
    }
}
