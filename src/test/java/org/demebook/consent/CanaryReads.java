package org.demebook.consent;

import static org.assertj.core.api.Assertions.fail;
import static org.demebook.Colony.INES;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import org.demebook.Thorough;

/** The addresses of the contract, for each thing that there is, of animals for some. */
final class CanaryReads {
    /** Of many animals so many are drawn for each address, and so many others where it names two things. */
    private static final int ANIMALS = Thorough.size("demebook.canary.animals", 5, 9);

    private static final int OTHERS = 3;

    private final CanaryWorld world;

    CanaryReads(CanaryWorld world) {
        this.world = world;
    }

    List<String> addresses(String path) {
        var addresses = List.of(path.replace("{population}", world.colony.code));
        while (addresses.get(0).contains("{")) {
            var first = addresses.get(0);
            var parameter = first.substring(first.indexOf('{') + 1, first.indexOf('}'));
            var filled = new ArrayList<String>();
            for (var address : addresses) {
                values(path, parameter).forEach(value -> filled.add(address.replace("{" + parameter + "}", value)));
            }
            addresses = filled;
        }
        return addresses;
    }

    private Set<String> values(String path, String parameter) {
        return switch (parameter) {
            case "number" -> some(path.contains("/photos/") ? OTHERS : ANIMALS);
            case "other" -> some(OTHERS);
            case "collection" -> and(Set.copyOf(world.collections.values()));
            case "key" -> and(union(world.ids("task"), world.ids("silenced-task")));
            case "id" -> and(world.ids(kindOfId(path)));
            // of a plan nothing is read below its litters
            case "draft", "plan" -> and(world.ids(parameter));
            case "photo" -> and(world.ids(path.contains("/litters/") ? "litter-photo" : "photo"));
            case "litter",
                    "record",
                    "grant",
                    "transfer",
                    "crossing",
                    "sheet",
                    "dispute",
                    "silence",
                    "code",
                    "secret",
                    "approach" -> and(world.ids(parameter));
            case "claim" -> and(world.ids("same-animal-claim"));
            case "animal" -> and(world.ids("adopted-animal"));
            case "type" -> Set.of("no-such-animal", "no-such-type");
            case "countedOn" -> Set.of("2024-01-01");
            case "name" -> Set.of(INES);
            case "node" -> Set.of("kPrK_qmxVWaYVA9wwBF6Iuo3vVzz7TxHCTwXBygrS4k");
            default -> fail("say here what {%s} of %s may be", parameter, path);
        };
    }

    static String kindOfId(String path) {
        for (var kind : List.of("introduction", "breeding-sign", "incubation", "import", "preparation")) {
            if (path.contains("/" + kind + "s/{id}")) {
                return kind;
            }
        }
        return fail("say here what {id} of %s is", path);
    }

    private Set<String> some(int many) {
        var drawn = new ArrayList<>(world.animals.keySet());
        Collections.shuffle(drawn, world.random);
        return new TreeSet<>(drawn.subList(0, Math.min(many, drawn.size())));
    }

    private static Set<String> union(Set<String> some, Set<String> others) {
        var all = new TreeSet<>(some);
        all.addAll(others);
        return all;
    }

    private static Set<String> and(Set<String> some) {
        return union(some, Set.of(UUID.randomUUID().toString()));
    }
}
