package org.demebook.consent;

import static java.util.Map.entry;
import static org.demebook.Colony.as;
import static org.demebook.consent.Things.PIP;

import io.restassured.response.Response;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** A body with which each operation does what it is for, where the asker may. */
final class Bodies {
    /** Operations on a population whose body or query names the thing that they are about. */
    static final Set<String> NAMES_A_THING = Set.of(
            "registerAnimal",
            "registerLitter",
            "recordIntroduction",
            "writeCareRecords",
            "addCareTask",
            "completeCareTasks",
            "offerAnimal",
            "offerAnimalElsewhere",
            "claimSameAnimalElsewhere",
            "giveGrant",
            "checkSharing",
            "proposeApproach",
            "issueSeasonPlan",
            "suggestPairings");

    private static final String NO_NODE = "kPrK_qmxVWaYVA9wwBF6Iuo3vVzz7TxHCTwXBygrS4k";
    private static final Map<String, Object> OUTCOME =
            Map.of("liveBorn", 2, "stillborn", 0, "unfertilised", 1, "ovaFound", 3);
    private static final Map<String, Object> SHED = Map.of("kind", "shed", "on", "2024-07-02");
    private static final Map<String, Object> WHY = Map.of("reason", "we looked again");

    private Bodies() {}

    private static String thisNode() {
        return as("administrator").get("/api/v1/node/identity").then().extract().path("nodeId");
    }

    static Question question(
            Operation operation,
            String address,
            List<String> about,
            Map<String, String> named,
            String asker,
            Things things) {
        var upload = uploadType(operation.id());
        var query =
                switch (operation.id()) {
                    case "addLitterPhoto" -> "?moment=after-separation";
                    case "suggestPairings" -> "?for=" + named.get("animal");
                    case "listCandidateSires" -> "?bornOn=2024-06-29";
                    default -> "";
                };
        return new Question(
                operation.method(),
                address + query,
                about,
                upload == null ? "application/json" : upload,
                upload == null
                        ? body(operation.id(), named, asker, things)
                        : upload.startsWith("image/") ? Things.picture() : "sex,born\nfemale,2020-06-01\n",
                wantsRevision(operation.id()) ? revision(asker, address) : null);
    }

    private static @Nullable String uploadType(String operation) {
        return switch (operation) {
            case "addPhoto", "addLitterPhoto" -> "image/png";
            case "checkImport", "startImport" -> "text/csv";
            default -> null;
        };
    }

    private static boolean wantsRevision(String operation) {
        return Set.of(
                        "describePopulation",
                        "reportDeath",
                        "withdrawDeath",
                        "describeAnimal",
                        "endIdentifier",
                        "claimLocality",
                        "stateParentage",
                        "determineSex",
                        "correctBreedingSign",
                        "correctCareRecord",
                        "setCountRules",
                        "fixRegions",
                        "stateRegionDistances",
                        "correctIntroduction",
                        "correctLitter")
                .contains(operation);
    }

    /** As the asker reads it; where they can read none, as somebody would guess it. */
    private static String revision(String asker, String address) {
        var read = address.replaceFirst("(/animals/[^/]+|/litters/[^/]+)/.*", "$1");
        Response answer = as(asker).get(read);
        var etag = answer.statusCode() == 200 ? answer.header("ETag") : null;
        return etag == null ? "\"1\"" : etag;
    }

    private static @Nullable Object body(String operation, Map<String, String> named, String asker, Things things) {
        var animal = named.get("animal");
        return switch (operation) {
            case "claimAnimal" -> claim(named);
            case "invite" -> Map.of("population", named.get("population"), "role", "member");
            case "acceptInvitation" ->
                Map.of(
                        "secret",
                        named.get("secret"),
                        "name",
                        fresh("guest"),
                        "fullName",
                        "Guest",
                        "password",
                        "a long walk on the cay");
            case "joinByInvitation" -> Map.of("secret", named.get("secret"));
            case "foundPopulation" ->
                Questions.population(fresh("F").substring(0, 6).toUpperCase(), "live-bearing");
            case "describePopulation" -> Questions.population(named.get("population"), "live-bearing");
            case "registerAnimal" -> {
                var young = new HashMap<>(Map.<String, Object>of("sex", "female", "born", "2024-06-01"));
                young.putAll(Map.of("origin", "unknown", "dam", animal));
                yield young;
            }
            case "setBreedingHold", "liftBreedingHold" -> WHY;
            case "noteBreedingSign" -> Map.of("kind", "ovulation", "happenedOn", "2024-03-14");
            case "correctBreedingSign" -> Map.of("kind", "ovulation", "happenedOn", "2024-03-15", "howKnown", "seen");
            case "writeCareRecord" -> SHED;
            case "correctCareRecord" -> Map.of("kind", "health-note", "on", "2024-07-02", "text", "wheezes no more");
            case "writeCareRecords" ->
                Map.of("records", List.of(Map.of("animal", animal, "kind", "shed", "on", "2024-07-02")));
            case "endCareRecord" -> Map.of("on", "2024-08-01");
            case "reportDeath" -> Map.of("on", "2025-01-03");
            case "describeAnimal" -> Map.of("born", "2020-06-02", "origin", "unknown", "notes", "calm");
            case "leaveFinding" -> Map.of("rule", "dam-young", "reason", "seen by two keepers");
            case "disputeAnimal" -> Map.of("seenOn", Questions.today());
            case "issueHandoverSheet" -> Map.of("kind", "sale");
            case "addIdentifier" -> Map.of("kind", "mark", "value", "white chin");
            case "startIncubation" -> Map.of("startedOn", "2024-04-01", "setPoint", Map.of("value", 31, "unit", "c"));
            case "readIncubator" -> Map.of("temperature", Map.of("value", 31.25, "unit", "c"));
            case "claimLocality" -> Map.of("certainty", "unknown");
            case "stateParentage" -> Map.of("sire", Map.of("kind", "unknown"));
            case "claimSameAnimal" -> Map.of("other", things.female(PIP));
            case "claimSameAnimalElsewhere" ->
                Map.of("animal", animal, "other", things.upland().entered().toString());
            case "determineSex" -> Map.of("sex", "unknown");
            case "withdrawBreedingSign",
                    "withdrawIntroduction",
                    "concedeDispute",
                    "withdrawDispute",
                    "withdrawHandoverSheet",
                    "refuseTransfer",
                    "withdrawCrossing",
                    "withdrawTransfer" -> WHY;
            case "settleDispute" -> Map.of("outcome", "dismissed", "reason", "the vet read the transponder there");
            case "addCareTask" -> Map.of("animal", animal, "what", "weigh", "dueOn", Questions.today());
            case "completeCareTasks" -> Map.of("keys", List.of(named.get("task")));
            case "completeCareTask", "acceptTransfer", "acceptCrossing", "renewClaimCode", "releaseCounts" -> Map.of();
            case "postponeCareTask" ->
                Map.of("to", LocalDate.now(ZoneOffset.UTC).plusDays(9).toString());
            case "silenceCareTask" -> Map.of("scope", "task");
            case "openCollection" -> Map.of("label", fresh("rack"), "sharedWith", List.of());
            case "chooseSharing" -> Map.of("choice", "private");
            case "setCountRules" -> Map.of("fewestKeepers", 3, "percent", 15);
            case "fixRegions" -> Map.of("names", Things.REGIONS);
            case "stateRegionDistances" ->
                Map.of("pairs", List.of(Map.of("one", "North", "other", "South", "kilometres", 420, "border", true)));
            case "statePairingTerms" -> Map.of("littersAtMost", 2, "notes", "no room before May");
            case "stateRegion" -> Map.of("region", Things.REGIONS.get(1));
            case "proposeApproach" -> Map.of("animal", animal, "partner", named.getOrDefault("partner", "U-2345-6789"));
            case "startSeasonDraft" -> Map.of("pairOn", Planned.pairOn(), "littersAtMost", 1);
            case "issueSeasonPlan" -> Map.of("draft", named.get("draft"));
            case "answerProposal" -> Map.of("answer", "decline", "reason", "no-reason");
            case "erase" -> Map.of("name", asker);
            case "waiveCountProtection" -> Map.of("waived", false);
            case "giveGrant" -> grant(animal);
            case "checkSharing" -> Map.of("grant", grant(animal));
            case "printHandoverSheet" -> Map.of("claimCode", named.get("claimCode"));
            case "recordIntroduction" -> Map.of("female", animal, "male", male(asker, things), "fromOn", "2024-01-05");
            case "correctIntroduction" -> Map.of("fromOn", "2024-01-06");
            case "endIntroduction" -> Map.of("untilOn", "2024-02-20");
            case "registerLitter" -> {
                var litter = new HashMap<>(OUTCOME);
                litter.putAll(Map.of("dam", animal, "born", "2024-06-29"));
                yield litter;
            }
            case "correctLitter" -> OUTCOME;
            case "stateTwins" ->
                Map.of("numbers", List.of(named.get("twin"), named.get("secondTwin")), "kind", "identical");
            case "withdrawTwins" -> Map.of("numbers", List.of(named.get("twin"), named.get("secondTwin")));
            case "admitMember" -> Map.of("name", Things.KESTREL, "role", "member");
            case "offerAnimalElsewhere" -> Map.of("animal", animal, "kind", "sale", "node", "U", "to", "mara");
            case "placeAdoptedAnimal" -> Map.of("to", PIP, "number", things.numberOfGone());
            case "offerAnimal" -> Map.of("animal", animal, "kind", "sale", "to", Things.third(asker));
            case "admitPeer" ->
                Map.of(
                        "address", "https://127.0.0.1:1",
                        "fingerprint", "kPrK _qmx VWaY VA9w wBF6 Iuo3 vVzz 7TxH CTwX Bygr S4k",
                        "name", "Upland");
            case "giveSeat" -> Map.of("node", named.getOrDefault("node", NO_NODE), "code", "U");
            case "nameHeir" -> Map.of("gone", named.getOrDefault("node", NO_NODE), "heir", thisNode());
            case "adoptAnimals" -> Map.of("gone", named.getOrDefault("node", NO_NODE));
            case "joinPopulation" -> Map.of("population", Things.none(), "founder", NO_NODE);
            case "signIn" -> Map.of("name", Things.KESTREL, "password", "a long walk on the cay");
            case "rotateNodeKey",
                    "setPeerAside",
                    "readmitPeer",
                    "sharePopulation",
                    "setNodeAside",
                    "followNodeAgain",
                    "openCalendar",
                    "closeCalendar",
                    "withdrawCareRecord",
                    "endCareSilence",
                    "restoreCareTask",
                    "renewGrant",
                    "withdrawGrant",
                    "confirmSameAnimal",
                    "confirmSameAnimalElsewhere",
                    "refuseCrossing",
                    "reverseSameAnimal",
                    "reverseSameAnimalElsewhere",
                    "stopSeasonDraft",
                    "agreeToApproach",
                    "refuseApproach",
                    "withdrawApproach" -> "{}";
            default -> null;
        };
    }

    private static String male(String asker, Things things) {
        return things.male(asker.equals("administrator") ? PIP : asker);
    }

    private static Map<String, Object> claim(Map<String, String> named) {
        return Map.of("code", named.get("claimCode"));
    }

    private static Map<String, Object> grant(String animal) {
        return Map.ofEntries(
                entry("recipient", Map.of("kind", "members")),
                entry("animals", List.of(animal)),
                entry("fieldGroups", List.of("identity")),
                entry("purposes", List.of("pedigree-view")),
                entry("actions", List.of("compute")));
    }

    private static String fresh(String word) {
        return word + UUID.randomUUID().toString().replace("-", "").substring(0, 10);
    }
}
