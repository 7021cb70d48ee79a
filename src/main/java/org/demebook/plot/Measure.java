package org.demebook.plot;

/**
 * What is measured along an axis.
 *
 * @param name with its unit, if it has one
 * @param numbers writes its values
 * @param decimals to how many places values are told; ticks are no finer: counts have 0
 * @param fromZero whether the axis has to begin at zero
 */
public record Measure(String name, Numbers numbers, int decimals, boolean fromZero) {
    String write(double value) {
        return numbers.write(value, decimals);
    }
}
