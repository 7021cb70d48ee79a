package org.demebook;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.lang.ArchCondition;
import com.tngtech.archunit.lang.ConditionEvents;
import com.tngtech.archunit.lang.SimpleConditionEvent;
import jakarta.persistence.Entity;
import jakarta.ws.rs.Path;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.demebook.peering.NodeIdentity;
import org.junit.jupiter.api.Test;

/** The map of the house: which room may know which. Directions only; taste is for people. */
class RoomsTest {
    private static final Set<String> MANNERS = Set.of("problem", "rest");
    private static final Set<String> VALUES = Set.of("notation", "taxon", "gestation");
    private static final Set<String> REGISTER =
            union(MANNERS, VALUES, Set.of("wall", "journal", "keeper", "consent", "photo", "registry", "kinship"));

    private static final Map<String, Set<String>> MAY_IMPORT = Map.ofEntries(
            Map.entry("kinship", Set.of()),
            Map.entry("season", Set.of("kinship")),
            Map.entry("chance", Set.of()),
            Map.entry("chart", Set.of()),
            Map.entry("paper", Set.of()),
            Map.entry("plot", Set.of()),
            Map.entry("disclosure", Set.of()),
            Map.entry("signing", Set.of()),
            Map.entry("merkle", Set.of("signing")),
            Map.entry("protocol", Set.of("signing", "merkle")),
            Map.entry("problem", Set.of()),
            Map.entry("notation", Set.of()),
            Map.entry("taxon", Set.of("notation")),
            Map.entry("gestation", Set.of("notation", "taxon")),
            Map.entry("rest", Set.of("problem")),
            Map.entry("peering", union(MANNERS, Set.of("wall", "keeper", "signing"))),
            Map.entry("wall", Set.of()),
            Map.entry("journal", union(MANNERS, Set.of("wall"))),
            Map.entry("keeper", Set.of("problem", "rest", "wall", "journal")),
            Map.entry("consent", union(MANNERS, Set.of("notation", "wall", "journal", "keeper"))),
            Map.entry("photo", union(MANNERS, VALUES, Set.of("wall", "journal"))),
            Map.entry(
                    "registry",
                    union(MANNERS, VALUES, Set.of("wall", "journal", "keeper", "consent", "kinship", "photo"))),
            Map.entry("care", REGISTER),
            Map.entry("calendar", union(REGISTER, Set.of("care"))),
            Map.entry("litter", REGISTER),
            Map.entry("reading", union(REGISTER, Set.of("litter", "chance"))),
            Map.entry("transfer", REGISTER),
            Map.entry("breeding", union(REGISTER, Set.of("gestation", "litter", "care", "transfer"))),
            Map.entry("incubation", union(REGISTER, Set.of("litter", "care"))),
            Map.entry("diary", REGISTER),
            Map.entry("rearing", union(REGISTER, Set.of("litter", "care", "diary"))),
            Map.entry("sheet", REGISTER),
            Map.entry("ancestry", REGISTER),
            Map.entry("handover", union(REGISTER, Set.of("diary", "rearing", "transfer", "ancestry", "paper"))),
            Map.entry("planning", union(REGISTER, Set.of("ancestry", "litter", "rearing"))),
            Map.entry("federation", union(REGISTER, Set.of("peering", "protocol", "signing", "merkle"))),
            Map.entry(
                    "crossing",
                    union(REGISTER, Set.of("transfer", "federation", "peering", "protocol", "signing", "telling"))),
            Map.entry("telling", union(REGISTER, Set.of("federation", "protocol"))),
            Map.entry("approach", union(REGISTER, Set.of("ancestry", "planning", "care"))),
            Map.entry("programme", union(REGISTER, Set.of("ancestry", "planning", "season", "care"))),
            Map.entry("census", union(REGISTER, Set.of("ancestry", "disclosure"))),
            Map.entry(
                    "leaving",
                    union(
                            REGISTER,
                            Set.of("sheet", "litter", "breeding", "incubation", "diary", "transfer", "handover"))),
            Map.entry(
                    "start",
                    union(
                            REGISTER,
                            Set.of("litter", "transfer", "sheet", "ancestry", "planning", "census", "peering"))));

    /** Pages are composed of every room; none knows of them. */
    private static final String PAGES = "web";

    @SafeVarargs
    private static Set<String> union(Set<String>... rooms) {
        return Stream.of(rooms).flatMap(Set::stream).collect(Collectors.toUnmodifiableSet());
    }

    private static final JavaClasses HOUSE = new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .importPackages("org.demebook");

    @Test
    void a_room_imports_only_the_rooms_that_the_map_allows() {
        classes().should(keepToTheMap()).check(HOUSE);
    }

    @Test
    void there_are_no_circles() {
        slices().matching("org.demebook.(*)..").should().beFreeOfCycles().check(HOUSE);
    }

    @Test
    void resources_and_entities_stay_in_their_room() {
        classes()
                .that()
                .areAnnotatedWith(Path.class)
                .should()
                .bePackagePrivate()
                .check(HOUSE);
        classes()
                .that()
                .areAnnotatedWith(Entity.class)
                .should()
                .bePackagePrivate()
                .check(HOUSE);
    }

    @Test
    void the_kinship_engine_knows_no_framework() {
        noClasses()
                .that()
                .resideInAPackage("org.demebook.kinship..")
                .should()
                .dependOnClassesThat()
                .resideOutsideOfPackages("org.demebook.kinship..", "java..", "org.jspecify..")
                .check(HOUSE);
    }

    @Test
    void what_is_signed_is_read_and_verified_without_a_framework() {
        noClasses()
                .that()
                .resideInAPackage("org.demebook.signing..")
                .should()
                .dependOnClassesThat()
                .resideOutsideOfPackages(
                        "org.demebook.signing..",
                        "java..",
                        "org.jspecify..",
                        "com.fasterxml.jackson.databind..",
                        "org.bouncycastle.math.ec.rfc8032..")
                .check(HOUSE);
    }

    @Test
    void trees_and_checkpoints_know_nothing_but_what_is_signed() {
        noClasses()
                .that()
                .resideInAPackage("org.demebook.merkle..")
                .should()
                .dependOnClassesThat()
                .resideOutsideOfPackages("org.demebook.merkle..", "org.demebook.signing..", "java..", "org.jspecify..")
                .check(HOUSE);
    }

    @Test
    void disclosure_control_knows_nothing_but_its_solvers() {
        noClasses()
                .that()
                .resideInAPackage("org.demebook.disclosure..")
                .should()
                .dependOnClassesThat()
                .resideOutsideOfPackages(
                        "org.demebook.disclosure..", "java..", "org.jspecify..", "com.google.ortools..", "org.ojalgo..")
                .check(HOUSE);
    }

    @Test
    void the_chart_knows_nothing_but_its_layout() {
        noClasses()
                .that()
                .resideInAPackage("org.demebook.chart..")
                .should()
                .dependOnClassesThat()
                .resideOutsideOfPackages("org.demebook.chart..", "java..", "org.jspecify..", "org.eclipse..")
                .check(HOUSE);
    }

    @Test
    void the_season_knows_nothing_but_kinship_and_its_solver() {
        noClasses()
                .that()
                .resideInAPackage("org.demebook.season..")
                .should()
                .dependOnClassesThat()
                .resideOutsideOfPackages(
                        "org.demebook.season..",
                        "org.demebook.kinship..",
                        "java..",
                        "org.jspecify..",
                        "com.google.ortools..")
                .check(HOUSE);
    }

    @Test
    void only_what_speaks_for_the_node_signs_in_its_name() {
        noClasses()
                .that()
                .resideOutsideOfPackages("org.demebook.peering..", "org.demebook.federation..")
                .should()
                .callMethod(NodeIdentity.class, "signingKey")
                .check(HOUSE);
    }

    private static ArchCondition<JavaClass> keepToTheMap() {
        return new ArchCondition<>("import only the rooms that MAY_IMPORT lists") {
            @Override
            public void check(JavaClass from, ConditionEvents events) {
                for (var dependency : from.getDirectDependenciesFromSelf()) {
                    var here = room(from);
                    var there = room(dependency.getTargetClass());
                    if (!there.isEmpty()
                            && !there.equals(here)
                            && !here.equals(PAGES)
                            && !MAY_IMPORT.getOrDefault(here, Set.of()).contains(there)) {
                        events.add(SimpleConditionEvent.violated(dependency, dependency.getDescription()));
                    }
                }
            }
        };
    }

    private static String room(JavaClass type) {
        var name = type.getPackageName();
        var prefix = "org.demebook.";
        return name.startsWith(prefix) ? name.substring(prefix.length()).split("\\.")[0] : "";
    }
}
