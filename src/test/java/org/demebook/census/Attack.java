package org.demebook.census;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import org.demebook.census.CountReleaseView.Cell;

/**
 * Somebody who has everything that was published and tries to get at what was not: every count and every total is a linear
 * equation in the inner cells; a cell is recovered where the equations leave it one value.
 */
final class Attack {
    private static final double ZERO = 1e-9;

    private Attack() {}

    /** The withheld inner cells that can be computed, as {@code sex·age}, with their counts. */
    static Map<String, Long> recovered(List<Cell> published) {
        var inner = published.stream()
                .filter(cell ->
                        !cell.sex().equals(CountTable.ALL) && !cell.age().equals(CountTable.ALL))
                .toList();
        var equations = new ArrayList<double[]>();
        for (var told : published) {
            if (told.count() != null) {
                equations.add(equation(inner, told));
            }
        }
        reduce(equations, inner.size());
        var recovered = new LinkedHashMap<String, Long>();
        for (var equation : equations) {
            var places = places(equation, inner.size());
            if (places.size() == 1 && inner.get(places.get(0)).count() == null) {
                var cell = inner.get(places.get(0));
                recovered.put(cell.sex() + "·" + cell.age(), Math.round(equation[inner.size()]));
            }
        }
        return recovered;
    }

    private static double[] equation(List<Cell> inner, Cell told) {
        Predicate<Cell> in =
                cell -> (told.sex().equals(CountTable.ALL) || told.sex().equals(cell.sex()))
                        && (told.age().equals(CountTable.ALL) || told.age().equals(cell.age()));
        double[] equation = new double[inner.size() + 1];
        for (int i = 0; i < inner.size(); i++) {
            equation[i] = in.test(inner.get(i)) ? 1 : 0;
        }
        equation[inner.size()] = told.count();
        return equation;
    }

    /** To reduced echelon form: what has one value then stands in an equation of its own. */
    private static void reduce(List<double[]> equations, int unknowns) {
        int row = 0;
        for (int column = 0; column < unknowns && row < equations.size(); column++) {
            int pivot = row;
            for (int i = row; i < equations.size(); i++) {
                if (Math.abs(equations.get(i)[column]) > Math.abs(equations.get(pivot)[column])) {
                    pivot = i;
                }
            }
            if (Math.abs(equations.get(pivot)[column]) < ZERO) {
                continue;
            }
            var swapped = equations.set(pivot, equations.get(row));
            equations.set(row, swapped);
            divide(swapped, swapped[column]);
            for (int i = 0; i < equations.size(); i++) {
                if (i != row) {
                    subtract(equations.get(i), swapped, equations.get(i)[column]);
                }
            }
            row++;
        }
    }

    private static void divide(double[] equation, double by) {
        for (int i = 0; i < equation.length; i++) {
            equation[i] /= by;
        }
    }

    private static void subtract(double[] equation, double[] other, double times) {
        for (int i = 0; i < equation.length; i++) {
            equation[i] -= times * other[i];
        }
    }

    private static List<Integer> places(double[] equation, int unknowns) {
        var places = new ArrayList<Integer>();
        for (int i = 0; i < unknowns; i++) {
            if (Math.abs(equation[i]) > ZERO) {
                places.add(i);
            }
        }
        return places;
    }
}
