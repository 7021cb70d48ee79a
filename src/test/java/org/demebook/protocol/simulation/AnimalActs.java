package org.demebook.protocol.simulation;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.demebook.protocol.AnimalId;
import org.demebook.protocol.Kept;
import org.demebook.protocol.Saying;
import org.demebook.protocol.Statement;
import org.demebook.protocol.Whereabouts;

/** Entering, telling, correcting, and finding that two are one. */
final class AnimalActs {
    private static final int ALL = 1_000_000;

    private final World world;
    private final Acts acts;
    private final Dice dice;

    AnimalActs(World world, Acts acts, Dice dice) {
        this.world = world;
        this.acts = acts;
        this.dice = dice;
    }

    boolean enter(SimNode node) {
        return enter(node, Optional.empty(), List.of());
    }

    boolean giveBirth(SimNode node) {
        var parents = List.copyOf(node.participant().animals());
        if (parents.size() < 2) {
            return enter(node);
        }
        return enter(node, Optional.of(dice.oneOf(parents)), sires(parents));
    }

    private List<Statement.SireShare> sires(List<AnimalId> parents) {
        var one = dice.oneOf(parents);
        var other = dice.oneOf(parents);
        if (one.equals(other) || dice.happens(0.8)) {
            return List.of(new Statement.SireShare(one, ALL));
        }
        int share = 1 + dice.below(ALL - 1);
        return Stream.of(new Statement.SireShare(one, share), new Statement.SireShare(other, ALL - share))
                .sorted(Comparator.comparing(Statement.SireShare::sire))
                .toList();
    }

    private boolean enter(SimNode node, Optional<AnimalId> dam, List<Statement.SireShare> sires) {
        var animal = new AnimalId(node.clock.newId(), node.id);
        var sayings = new ArrayList<Saying>();
        sayings.add(Saying.toAll(new Statement.AnimalEntered(animal)));
        sayings.add(new Saying(ancestry(animal, dam, sires), readers(node)));
        sayings.add(new Saying(holding(node, animal), readers(node)));
        return acts.write(node, "enters " + name(animal) + parents(dam, sires), sayings);
    }

    private String parents(Optional<AnimalId> dam, List<Statement.SireShare> sires) {
        return dam.map(this::name).orElse("–") + " × "
                + sires.stream().map(it -> name(it.sire())).collect(Collectors.joining("|"));
    }

    private String name(AnimalId animal) {
        return " " + world.story.name('a', animal) + " ";
    }

    private Statement.AncestryTold ancestry(AnimalId animal, Optional<AnimalId> dam, List<Statement.SireShare> sires) {
        return new Statement.AncestryTold(
                animal,
                Optional.of("2030"),
                dam,
                sires,
                dam.isEmpty() && sires.isEmpty(),
                JsonNodeFactory.instance.objectNode().put("name", world.story.name('a', animal)));
    }

    private Statement.HoldingTold holding(SimNode node, AnimalId animal) {
        return new Statement.HoldingTold(
                animal,
                dice.oneOf(List.of("female", "male", "unknown")),
                dice.happens(0.9),
                "keeper-" + node.number + dice.below(3),
                JsonNodeFactory.instance.objectNode());
    }

    private Optional<Set<String>> readers(SimNode node) {
        if (!world.conditions.secrets() || dice.happens(0.4)) {
            return Optional.empty();
        }
        world.story.count(Happening.TOLD_TO_SOME);
        return Optional.of(dice.someOf(node.participant().others()));
    }

    /** Of an animal that the node registered; half of the time by an animal that descends from it. */
    boolean correct(SimNode node) {
        var told = node.participant().told().ancestry();
        var own = dice.anyOf(told.keySet().stream()
                .filter(animal -> animal.node().equals(node.id))
                .toList());
        if (own.isEmpty()) {
            return false;
        }
        var young = told.values().stream()
                .filter(it -> it.dam().equals(own)
                        || it.sires().stream().anyMatch(sire -> sire.sire().equals(own.get())))
                .map(Statement.AncestryTold::animal)
                .toList();
        var all = List.copyOf(node.participant().animals());
        var dam = dice.happens(0.5) && !young.isEmpty() ? dice.anyOf(young) : dice.anyOf(all);
        dam = dam.filter(it -> !it.equals(own.get()) && dice.happens(0.9));
        var sires = dice.happens(0.5) ? List.<Statement.SireShare>of() : sires(all);
        var says = ancestry(own.get(), dam, sires);
        var what = "corrects the parents of" + name(own.get()) + "to" + parents(dam, sires);
        if (!acts.write(node, what, List.of(new Saying(says, readers(node))))) {
            return false;
        }
        world.story.count(Happening.CORRECTED);
        return true;
    }

    boolean tellHolding(SimNode node) {
        var held = node.participant().animals().stream()
                .filter(animal -> node.participant().whereabouts(animal) instanceof Whereabouts.Held it
                        && it.node().equals(node.id))
                .toList();
        var animal = dice.anyOf(held);
        return animal.isPresent()
                && acts.write(
                        node,
                        "tells how it is with" + name(animal.get()),
                        List.of(new Saying(holding(node, animal.get()), readers(node))));
    }

    boolean withdrawTelling(SimNode node) {
        var tellings = node.disk.journal(node.id).stream()
                .filter(kept -> world.says(kept)
                        .filter(says -> says instanceof Statement.AncestryTold || says instanceof Statement.HoldingTold)
                        .isPresent())
                .map(Kept::seq)
                .filter(seq -> dice.happens(0.2))
                .toList();
        return !tellings.isEmpty()
                && acts.write(
                        node,
                        "withdraws what it told in " + tellings,
                        List.of(Saying.toAll(new Statement.TellingsWithdrawn(tellings))));
    }

    boolean claim(SimNode node) {
        var animals = node.participant().animals();
        var own = dice.anyOf(
                animals.stream().filter(animal -> animal.node().equals(node.id)).toList());
        var other = dice.anyOf(animals.stream()
                .filter(animal -> !animal.node().equals(node.id))
                .toList());
        if (own.isEmpty() || other.isEmpty() || dice.happens(0.5)) {
            return false;
        }
        var claim = node.clock.newId();
        return acts.write(
                node,
                "claims that" + name(own.get()) + "is" + name(other.get()),
                List.of(Saying.toAll(new Statement.SameAnimalClaimed(claim, own.get(), other.get()))));
    }

    boolean confirm(SimNode node) {
        var claim = dice.anyOf(world.readBy(node).stream()
                .filter(entry -> entry.says() instanceof Statement.SameAnimalClaimed it
                        && it.other().node().equals(node.id))
                .toList());
        if (claim.isEmpty()) {
            return false;
        }
        var entry = claim.get();
        var says = (Statement.SameAnimalClaimed) entry.says();
        return acts.write(
                node,
                "confirms that" + name(says.other()) + "is" + name(says.animal()),
                List.of(Saying.toAll(new Statement.SameAnimalConfirmed(says.claim(), world.carried(entry)))));
    }

    boolean reverse(SimNode node) {
        var claim = dice.anyOf(world.readBy(node).stream()
                .filter(entry -> entry.says() instanceof Statement.SameAnimalClaimed it
                        && (it.animal().node().equals(node.id)
                                || it.other().node().equals(node.id)))
                .map(entry -> ((Statement.SameAnimalClaimed) entry.says()))
                .toList());
        return claim.isPresent()
                && acts.write(
                        node,
                        "takes back that" + name(claim.get().animal()) + "is"
                                + name(claim.get().other()),
                        List.of(Saying.toAll(
                                new Statement.SameAnimalReversed(claim.get().claim()))));
    }
}
