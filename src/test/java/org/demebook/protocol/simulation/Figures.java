package org.demebook.protocol.simulation;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.TreeSet;
import org.demebook.kinship.Pedigree;
import org.demebook.protocol.AnimalId;
import org.demebook.protocol.Statement;
import org.demebook.protocol.Told;

/**
 * What one node knows and computes: the bits of all kinships, animals in the order of their ids.
 *
 * @param kinships bits of each animal's with each animal not before it
 */
record Figures(Told told, List<Long> kinships) {
    private static final double ALL = 1_000_000;

    static Figures of(SimNode node) {
        var told = node.participant().told();
        var animals = new TreeSet<AnimalId>();
        told.ancestry().values().forEach(ancestry -> {
            animals.add(same(told, ancestry.animal()));
            ancestry.dam().ifPresent(dam -> animals.add(same(told, dam)));
            ancestry.sires().forEach(share -> animals.add(same(told, share.sire())));
        });
        var order = List.copyOf(animals);
        var rows = new HashMap<AnimalId, Integer>();
        order.forEach(animal -> rows.put(animal, rows.size()));
        var builder = Pedigree.builder(order.size());
        for (var animal : order) {
            int row = rows.get(animal);
            builder.key(row, animal.id());
            var ancestry = told.ancestry().get(animal);
            if (ancestry == null || ancestry.dam().isEmpty() && ancestry.sires().isEmpty()) {
                builder.founder(row);
                continue;
            }
            int dam = ancestry.dam().map(it -> rows.get(same(told, it))).orElse(Pedigree.UNKNOWN);
            if (ancestry.sires().size() > 1) {
                int[] candidates = ancestry.sires().stream()
                        .mapToInt(share -> rows.get(same(told, share.sire())))
                        .toArray();
                double[] shares = ancestry.sires().stream()
                        .mapToDouble(share -> share.share() / ALL)
                        .toArray();
                builder.youngOfOneOf(row, candidates, shares, dam);
            } else {
                int sire = ancestry.sires().stream()
                        .map(Statement.SireShare::sire)
                        .map(it -> rows.get(same(told, it)))
                        .findFirst()
                        .orElse(Pedigree.UNKNOWN);
                builder.young(row, sire, dam);
            }
        }
        return new Figures(told, kinships(builder.build()));
    }

    private static List<Long> kinships(Pedigree pedigree) {
        var bits = new ArrayList<Long>();
        for (int animal = 0; animal < pedigree.size(); animal++) {
            for (int other = animal; other < pedigree.size(); other++) {
                bits.add(Double.doubleToRawLongBits(pedigree.kinship(animal, other)));
            }
        }
        return bits;
    }

    private static AnimalId same(Told told, AnimalId animal) {
        return told.sameAs().getOrDefault(animal, animal);
    }
}
