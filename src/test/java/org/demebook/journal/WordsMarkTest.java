package org.demebook.journal;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.annotation.JsonSubTypes;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.Type;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import org.demebook.notation.Length;
import org.demebook.notation.Mass;
import org.demebook.notation.RoughDate;
import org.demebook.notation.SourceCode;
import org.demebook.notation.StudbookNumber;
import org.junit.jupiter.api.Test;

/**
 * Every text that a fact can hold is either marked as somebody's words, or listed here as something else. There is no default:
 * a new text fails until somebody has decided what it is.
 */
class WordsMarkTest {
    /** What a parser of this project read, and writes back in one form: nothing that anybody words. */
    private static final Set<Class<?>> VALUES =
            Set.of(StudbookNumber.class, RoughDate.class, SourceCode.class, Mass.class, Length.class);

    private static final Set<Class<?>> NO_TEXTS = Set.of(
            UUID.class,
            LocalDate.class,
            Instant.class,
            Long.class,
            Integer.class,
            Boolean.class,
            long.class,
            int.class,
            double.class,
            boolean.class);

    /** Texts that nobody words, each with what it is. */
    private static final Set<String> NOT_WORDS = Set.of(
            // numbers of the studbook, codes of nodes and populations
            "AnimalRegistered.number.nodeCode",
            "AnimalRegistered.number.populationCode",
            "ApproachProposed.partnerPseudonym",
            "ApproachProposed.pseudonym",
            "CountsReleased.counted.number",
            "CountsReleased.population",
            "AdoptedAnimalPlaced.federatedId",
            "AdoptedAnimalPlaced.from",
            "AnimalNamedBetweenNodes.federatedId",
            "AnimalOfferedElsewhere.federatedId",
            "AnimalOfferedElsewhere.node",
            "OfferCameIn.federatedId",
            "OfferCameIn.node",
            "GrantGiven.recipient.node",
            "NodeFollowedAgain.node",
            "NodeSetAside.node",
            "PopulationFounded.code",
            "PopulationShared.founder",
            "SameAnimalClaimedElsewhere.other",
            "SameAnimalConfirmedElsewhere.other",
            "SeasonPlanIssued.plan.heads",
            // words of a list, and the names of rules, fields, tasks and notices
            "AnimalRegistered.identifiers.kind",
            "AnimalRegistered.identifiers.scheme",
            "AnimalRegistered.sire.None.fusion",
            "CareCompletionWithdrawn.key",
            "CarePostponementWithdrawn.key",
            "CareTaskDone.key",
            "CareTaskPostponed.key",
            "CareTaskSilenced.key",
            "CountsReleased.cells.age",
            "CountsReleased.cells.born",
            "CountsReleased.cells.informationWithheld",
            "CountsReleased.cells.sex",
            "CountsReleased.counted.age",
            "CountsReleased.counted.born",
            "CountsReleased.counted.sex",
            "CountsReleased.cells.region",
            "CountsReleased.counted.region",
            "CountsReleased.method",
            "FindingLeft.field",
            "FindingLeft.level",
            "FindingLeft.rule",
            "FindingLeft.subjectKind",
            "GrantGiven.noticeVersion",
            "IdentifierAdded.identifier.kind",
            "IdentifierAdded.identifier.scheme",
            "IdentifierEnded.identifier.kind",
            "IdentifierEnded.identifier.scheme",
            "LitterRegistered.sire.None.fusion",
            "ParentageStated.sire.None.fusion",
            // numbers with a fraction, ranges, and quantities as they were written, which a parser accepted
            "AnimalRegistered.sire.Candidates.candidates.probability",
            "AnimalRegistered.sire.None.secondDivision",
            "CareRecordCorrected.record.Meal.preyMass.written",
            "CareRecordCorrected.record.Measures.length.written",
            "CareRecordCorrected.record.Measures.mass.written",
            "CareRecorded.record.Meal.preyMass.written",
            "CareRecorded.record.Measures.length.written",
            "CareRecorded.record.Measures.mass.written",
            "CountsReleased.founderGenomeEquivalents",
            "CountsReleased.geneDiversity",
            "CountsReleased.keepers",
            "IncubationStarted.setPointCelsius",
            "IncubationStarted.setPointWritten",
            "IncubatorRead.celsius",
            "IncubatorRead.written",
            "LitterRegistered.sire.Candidates.candidates.probability",
            "LitterRegistered.sire.None.secondDivision",
            "ParentageStated.sire.Candidates.candidates.probability",
            "ParentageStated.sire.None.secondDivision",
            // digests
            "LitterPhotographed.sha256",
            "PhotoAdded.sha256",
            "SheetIssued.digest",
            "SeasonPlanIssued.plan.inputDigest",
            // of the population, stated by its coordinators for everybody
            "CountsReleased.name",
            "CountsReleased.taxon",
            "RegionDistancesStated.pairs.one",
            "RegionDistancesStated.pairs.other",
            "RegionsFixed.names",
            // one of these
            "PairingTermsStated.exchangeWith",
            "RegionStated.region",
            "PopulationDescribed.locality",
            "PopulationDescribed.name",
            "PopulationDescribed.profile.breeding.testsBeforePairing",
            "PopulationDescribed.profile.sources",
            "PopulationDescribed.taxon",
            "PopulationFounded.locality",
            "PopulationFounded.name",
            "PopulationFounded.profile.breeding.testsBeforePairing",
            "PopulationFounded.profile.sources",
            "PopulationFounded.taxon",
            // where an animal is from: a fact of the animal, without which its young lose their place in the programme
            "AnimalRegistered.locality.locality",
            "LocalityClaimed.claim.locality");

    private final TreeSet<String> texts = new TreeSet<>();
    private final TreeSet<String> unthought = new TreeSet<>();

    @Test
    void every_text_of_a_fact_is_marked_as_words_or_listed_as_none() {
        var facts = new ClassFileImporter()
                .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS).importPackages("org.demebook").stream()
                        .filter(type -> type.isAssignableTo(Fact.class) && !type.isInterface())
                        .map(JavaClass::reflect)
                        .toList();
        assertThat(facts).hasSizeGreaterThan(60).allMatch(Class::isRecord);
        facts.forEach(fact -> look(fact, fact.getSimpleName()));
        assertThat(unthought).as("types that this test cannot look into").isEmpty();
        assertThat(texts).as("texts without a mark").containsExactlyInAnyOrderElementsOf(NOT_WORDS);
    }

    private void look(Class<?> record, String name) {
        for (var component : record.getRecordComponents()) {
            if (!component.isAnnotationPresent(Words.class)) {
                look(component.getGenericType(), name + "." + component.getName());
            }
        }
    }

    private void look(Type type, String name) {
        if (type instanceof ParameterizedType generic) {
            assertThat(Set.of(List.class, Map.class)).contains((Class<?>) generic.getRawType());
            for (var part : generic.getActualTypeArguments()) {
                look(part, name);
            }
        } else if (type == String.class) {
            texts.add(name);
        } else if (type instanceof Class<?> known && known.isRecord()) {
            look(known, name);
        } else if (type instanceof Class<?> known && known.isSealed()) {
            Arrays.stream(known.getAnnotation(JsonSubTypes.class).value())
                    .forEach(
                            kind -> look(kind.value(), name + "." + kind.value().getSimpleName()));
        } else if (!(type instanceof Class<?> known
                && (known.isEnum() || NO_TEXTS.contains(known) || VALUES.contains(known)))) {
            unthought.add(name + " " + type.getTypeName());
        }
    }
}
