package org.demebook.plot;

import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;

/** Reads paths back by the grammar of SVG 2, section 9.3, as far as plots use it: M, L, H, V, Z, and A as a straight line. */
final class PathReader {
    private static final Pattern PART = Pattern.compile("([MLHVZA])|(-?\\d+(?:\\.\\d)?)|\\s+|(.)");

    private PathReader() {}

    /** The bounds of each part that begins with a move. */
    static List<Rectangle2D> bounds(String d) {
        return subpaths(d).stream()
                .map(path -> (Rectangle2D) path.getBounds2D())
                .toList();
    }

    static List<Path2D.Double> subpaths(String d) {
        var paths = new ArrayList<Path2D.Double>();
        var numbers = new ArrayList<Double>();
        char command = ' ';
        var parts = PART.matcher(d);
        while (parts.find()) {
            if (parts.group(3) != null) {
                throw new AssertionError("No path: " + d);
            } else if (parts.group(1) != null) {
                apply(paths, command, numbers);
                numbers.clear();
                command = parts.group(1).charAt(0);
            } else if (parts.group(2) != null) {
                numbers.add(Double.valueOf(parts.group(2)));
            }
        }
        apply(paths, command, numbers);
        return paths;
    }

    private static void apply(List<Path2D.Double> paths, char command, List<Double> numbers) {
        if (command == 'M') {
            paths.add(new Path2D.Double());
            paths.get(paths.size() - 1).moveTo(numbers.get(0), numbers.get(1));
            return;
        }
        if (command == ' ') {
            return;
        }
        var path = paths.get(paths.size() - 1);
        var here = path.getCurrentPoint();
        switch (command) {
            case 'L' -> path.lineTo(numbers.get(0), numbers.get(1));
            case 'H' -> path.lineTo(numbers.get(0), here.getY());
            case 'V' -> path.lineTo(here.getX(), numbers.get(0));
            case 'A' -> path.lineTo(numbers.get(5), numbers.get(6));
            case 'Z' -> path.closePath();
            default -> throw new AssertionError(command);
        }
    }
}
