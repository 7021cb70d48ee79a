package org.demebook.consent;

import static org.demebook.problem.ProblemType.INVALID_VALUES;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.demebook.consent.EffectView.Line;
import org.demebook.consent.GrantFacts.GrantGiven;
import org.demebook.consent.NewGrant.StatedRecipient;
import org.demebook.keeper.CollectionView;
import org.demebook.keeper.Keepers;
import org.demebook.keeper.Role;
import org.demebook.keeper.Standing;
import org.demebook.problem.Finding;
import org.demebook.problem.Refusal;

/** What a grant would change before it is given: the very decision, made with the grants of now and with those of then. */
@ApplicationScoped
public class Effects {
    @Inject
    Keepers keepers;

    @Inject
    GrantChecks checks;

    @Inject
    Choices choices;

    @Inject
    Snapshots snapshots;

    @Inject
    AnimalNumbers animals;

    private record Plan(UUID collectionId, List<Grant> before, List<Grant> after, Instant at) {}

    /** Animals about which every decision is the same: of the same parties, and named in no grant. */
    private record Alike(Subject one, int number) {}

    /** Refuses what giving it would refuse. Up to 240 decisions for each kind of animal and recipient, twice, well under a microsecond each. */
    @Transactional
    public EffectView effect(Standing by, PlannedSharing sharing) {
        var plan = plan(by, sharing);
        return effect(by, plan, animals.ofCollections(by.populationId(), List.of(plan.collectionId())));
    }

    /** What each of the asker's collections shares now, in their order: the effect of changing nothing. */
    @Transactional
    public List<EffectView> ofNow(Standing by) {
        var grants = snapshots.now(by.populationId()).grants();
        var collectionIds =
                keepers.collections(by).stream().map(CollectionView::id).toList();
        var subjects = animals.ofCollections(by.populationId(), collectionIds);
        var now = checks.now();
        return collectionIds.stream()
                .map(id -> effect(
                        by,
                        new Plan(id, grants, grants, now),
                        subjects.stream()
                                .filter(subject -> subject.parties().contains(id))
                                .toList()))
                .toList();
    }

    private EffectView effect(Standing by, Plan wide, List<Subject> subjects) {
        var plan = ofParties(wide, subjects);
        var kinds = alike(plan, subjects);
        var recipients = recipients(plan);
        var names = keepers.names(recipients.stream()
                .map(Recipient::keeperId)
                .filter(id -> id != null)
                .collect(Collectors.toSet()));
        var lines = new ArrayList<Line>();
        for (var recipient : recipients) {
            var stated = new StatedRecipient(
                    recipient.kind(),
                    recipient.keeperId() == null ? null : names.get(recipient.keeperId()),
                    recipient.node());
            var audience = audience(by, recipient);
            for (var purpose : Purpose.values()) {
                var before = new Lens(audience, purpose, plan.at(), plan.before());
                var after = new Lens(audience, purpose, plan.at(), plan.after());
                for (var action : Action.values()) {
                    lines.addAll(lines(stated, purpose, action, before, after, kinds));
                }
            }
        }
        return new EffectView(plan.collectionId(), subjects.size(), lines);
    }

    /** Without the grants of collections that have no say in any of these animals: they decide nothing here. */
    private static Plan ofParties(Plan plan, List<Subject> subjects) {
        var parties = new HashSet<UUID>();
        parties.add(plan.collectionId());
        subjects.forEach(subject -> parties.addAll(subject.parties()));
        return new Plan(plan.collectionId(), of(parties, plan.before()), of(parties, plan.after()), plan.at());
    }

    private static List<Grant> of(Set<UUID> parties, List<Grant> grants) {
        return grants.stream()
                .filter(grant -> parties.contains(grant.collectionId()))
                .toList();
    }

    private static List<Alike> alike(Plan plan, List<Subject> subjects) {
        var named = Stream.of(plan.before(), plan.after())
                .flatMap(List::stream)
                .map(grant -> grant.scope().animalIds())
                .filter(Objects::nonNull)
                .flatMap(Set::stream)
                .collect(Collectors.toSet());
        var kinds = subjects.stream()
                .collect(Collectors.groupingBy(
                        subject -> named.contains(subject.animalId()) ? subject : subject.parties(),
                        LinkedHashMap::new,
                        Collectors.toList()));
        return kinds.values().stream()
                .map(animals -> new Alike(animals.get(0), animals.size()))
                .toList();
    }

    private Plan plan(Standing by, PlannedSharing sharing) {
        if ((sharing.grant() == null) == (sharing.choice() == null)) {
            throw new Refusal(
                    INVALID_VALUES,
                    "Send either a grant or a choice, so that it is clear which effect is meant.",
                    List.of(Finding.error(
                            sharing.grant() == null ? "grant" : "choice", sharing.choice(), "either, or")));
        }
        var now = checks.now();
        var before = snapshots.now(by.populationId()).grants();
        if (sharing.grant() != null) {
            var given = checks.checked(by, sharing.grant());
            // of one that begins later, how it will be then
            var at = given.from().isAfter(now) ? given.from() : now.plus(Duration.ofMillis(1));
            return new Plan(given.collectionId(), before, with(by, before, List.of(given), Set.of()), at);
        }
        var collection = keepers.collection(by, sharing.collection()).id();
        var choice = Objects.requireNonNull(sharing.choice());
        var given = ReadyGrants.of(choice).stream()
                .map(line -> line.given(collection, choice, now))
                .toList();
        var superseded = choices.standing(by, collection, choice).stream()
                .map(row -> row.id)
                .collect(Collectors.toSet());
        return new Plan(collection, before, with(by, before, given, superseded), now.plus(Duration.ofMillis(1)));
    }

    private static List<Grant> with(Standing by, List<Grant> present, List<GrantGiven> given, Set<UUID> superseded) {
        var then = new ArrayList<Grant>();
        present.stream().filter(grant -> !superseded.contains(grant.id())).forEach(then::add);
        for (var one : given) {
            then.add(new Grant(
                    one.grantId(),
                    one.collectionId(),
                    by.keeperId(),
                    one.recipient(),
                    one.animalIds() == null ? Scope.WHOLE_COLLECTION : Scope.animals(Set.copyOf(one.animalIds())),
                    Set.copyOf(one.fieldGroups()),
                    Set.copyOf(one.purposes()),
                    Set.copyOf(one.actions()),
                    one.from(),
                    one.until(),
                    one.conditions(),
                    one.noticeVersion(),
                    null,
                    null));
        }
        return then;
    }

    /** Everybody, and whoever is named in a grant of the collection. */
    private static Set<Recipient> recipients(Plan plan) {
        var recipients = new LinkedHashSet<>(List.of(Recipient.PUBLIC, Recipient.MEMBERS, Recipient.COORDINATORS));
        for (var grants : List.of(plan.before(), plan.after())) {
            grants.stream()
                    .filter(grant -> grant.collectionId().equals(plan.collectionId()))
                    .filter(grant -> grant.state(plan.at()) == GrantState.LIVE)
                    .map(Grant::recipient)
                    .forEach(recipients::add);
        }
        return recipients;
    }

    /** Somebody of that kind who has no say in the animals. */
    private static Audience audience(Standing by, Recipient recipient) {
        return switch (recipient.kind()) {
            case PUBLIC -> Audience.PUBLIC(by.populationId());
            case MEMBERS -> new Audience(by.populationId(), null, Role.MEMBER, Set.of());
            case COORDINATORS -> new Audience(by.populationId(), null, Role.COORDINATOR, Set.of());
            case KEEPER -> new Audience(by.populationId(), recipient.keeperId(), Role.MEMBER, Set.of());
            case NODE -> Audience.node(by.populationId(), String.valueOf(recipient.node()));
        };
    }

    private record Numbers(int before, int after) {}

    private static List<Line> lines(
            StatedRecipient recipient, Purpose purpose, Action action, Lens before, Lens after, List<Alike> kinds) {
        Map<Numbers, List<FieldGroup>> together = new LinkedHashMap<>();
        for (var fieldGroup : FieldGroup.values()) {
            var numbers =
                    new Numbers(count(before, kinds, fieldGroup, action), count(after, kinds, fieldGroup, action));
            if (numbers.before() > 0 || numbers.after() > 0) {
                together.computeIfAbsent(numbers, same -> new ArrayList<>()).add(fieldGroup);
            }
        }
        return together.entrySet().stream()
                .map(same -> new Line(
                        recipient,
                        purpose,
                        action,
                        same.getValue(),
                        same.getKey().before(),
                        same.getKey().after()))
                .toList();
    }

    private static int count(Lens lens, List<Alike> kinds, FieldGroup fieldGroup, Action action) {
        int count = 0;
        for (var kind : kinds) {
            if (lens.may(kind.one(), fieldGroup, action)) {
                count += kind.number();
            }
        }
        return count;
    }
}
