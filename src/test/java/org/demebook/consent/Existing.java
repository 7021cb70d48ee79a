package org.demebook.consent;

import static org.demebook.Colony.DOV;
import static org.demebook.Colony.WREN;
import static org.demebook.Colony.as;
import static org.demebook.consent.Things.third;

import java.util.List;
import java.util.Map;
import org.demebook.Colony;
import org.demebook.consent.Questions.Relation;
import org.demebook.peering.AdmittedPeer;

/** The thing that an operation is about, made for its owner; whoever else is needed for it is neither asker nor owner. */
record Existing(Things things, Seekers seekers, Planned planned, String asker, String owner, Relation relation) {
    void of(Operation operation, Map<String, String> named) {
        for (var parameter : operation.parameters()) {
            switch (parameter) {
                case "number" -> named.put(parameter, number(operation.id()));
                case "other" -> named.put(parameter, things.male(owner));
                case "kind" -> named.put(parameter, "mark");
                case "value" -> named.put(parameter, Things.MARK);
                case "id" -> named.put(parameter, id(operation.path()));
                case "record" -> named.put(parameter, things.careRecord(owner));
                case "silence" -> named.put(parameter, things.silence(owner));
                case "key" -> named.put(parameter, key(operation.id()));
                case "collection" -> named.put(parameter, things.collection(owner));
                case "countedOn" -> named.put(parameter, Questions.today());
                case "dispute" -> named.put(parameter, dispute(operation.id()));
                case "grant" -> named.put(parameter, things.grant(owner));
                case "sheet" -> sheet(operation.id(), named);
                case "litter" -> {
                    if (operation.path().contains("/season-plans/")) {
                        named.put(parameter, planned.litter(owner));
                    } else {
                        litter(operation.id(), named);
                    }
                }
                // all of a population read that a plan was issued: hidden is that of another
                case "plan" ->
                    named.put(
                            parameter,
                            relation == Relation.FOREIGN && !operation.id().equals("answerProposal")
                                    ? planned.elsewhere
                                    : planned.plan);
                case "draft" -> named.put(parameter, Planned.draft(planned.colony, owner));
                case "photo" -> photo(operation.path(), named);
                case "claim" -> named.put(parameter, claim(operation.id()));
                case "transfer" -> named.put(parameter, transfer(operation.id()));
                case "crossing" -> named.put(parameter, crossing(operation.id()));
                case "approach" -> named.put(parameter, approach(operation.id()));
                case "animal" -> named.put(parameter, things.adopted());
                case "name" -> leaving(named);
                case "node" -> named.put(parameter, AdmittedPeer.nodeId());
                case "type" -> named.put(parameter, "no-such-animal");
                case "code" ->
                    named.put(
                            parameter,
                            things.sheet(WREN, things.female(WREN)).extract().path("code"));
                case "secret" -> named.put(parameter, calendar());
                default -> {}
            }
        }
        SharedPopulation.of(operation, named);
        switch (operation.id()) {
            // whoever claims it joins the population: one of its own
            case "claimAnimal" -> named.put("claimCode", handedOut(third(asker)));
            case "acceptInvitation", "joinByInvitation" -> named.put("secret", invitation());
            // who has two has to say which, ever after: one of its own
            case "openCollection" -> {
                if (relation == Relation.OWN) {
                    named.put("population", Colony.foundPrivate().code);
                }
            }
            // whoever leaves for good is gone: from one of its own
            case "erase" -> {
                if (relation == Relation.OWN) {
                    named.put("population", Colony.foundPrivate().code);
                }
            }
            case "completeCareTasks" -> named.put("task", things.task(owner));
            case "offerAnimalElsewhere", "claimSameAnimalElsewhere" -> things.upland();
            // it would take the place of the plan that others are asked about: one of its own
            case "issueSeasonPlan" -> {
                if (relation == Relation.OWN) {
                    var colony = Planned.planning();
                    named.put("population", colony.code);
                    named.put("draft", Planned.draft(colony, owner));
                } else {
                    named.put("draft", Planned.draft(planned.colony, owner));
                }
            }
            default -> {}
        }
        if (Bodies.NAMES_A_THING.contains(operation.id())
                && !List.of("completeCareTasks", "issueSeasonPlan").contains(operation.id())) {
            named.put("animal", things.female(owner));
        }
        if (operation.id().equals("proposeApproach") && relation == Relation.OWN) {
            named.put("partner", seekers.pseudonym(owner, named.get("animal"), third(owner)));
        }
    }

    private String number(String operation) {
        return switch (operation) {
            case "withdrawDeath" -> things.dead(owner);
            case "liftBreedingHold" -> things.onHold(owner);
            // what is disputed was in the asker's hands; another's was in others'
            case "disputeAnimal" ->
                relation == Relation.OWN ? things.sold(owner, third(owner)) : things.sold(third(asker), owner);
            default -> things.female(owner);
        };
    }

    private String id(String path) {
        if (path.contains("/breeding-signs/")) {
            return things.sign(owner);
        }
        if (path.contains("/introductions/")) {
            return things.introduction(owner);
        }
        return path.contains("/imports/") ? things.imported(owner) : things.incubation(owner);
    }

    private String key(String operation) {
        var key = things.task(owner);
        if (operation.equals("restoreCareTask")) {
            things.colony
                    .post(owner, "/care-tasks/" + key + "/completion", Map.of())
                    .statusCode(200);
        }
        return key;
    }

    private String dispute(String operation) {
        if (relation != Relation.OWN) {
            return things.dispute(owner, third(asker));
        }
        return operation.equals("concedeDispute")
                ? things.dispute(third(asker), asker)
                : things.dispute(asker, third(asker));
    }

    private void sheet(String operation, Map<String, String> named) {
        var animal = things.female(owner);
        named.put("sheet", things.sheet(owner, animal).extract().path("id"));
        if (operation.equals("printHandoverSheet")) {
            named.put("claimCode", things.handOut(owner, animal).extract().path("claimCode"));
        }
    }

    private void litter(String operation, Map<String, String> named) {
        var litter = things.litter(owner);
        String id = litter.extract().path("litter.id");
        named.put("litter", id);
        named.put("twin", litter.extract().path("young[0].number"));
        named.put("secondTwin", litter.extract().path("young[1].number"));
        if (operation.equals("withdrawTwins")) {
            var twins =
                    Map.of("numbers", new String[] {named.get("twin"), named.get("secondTwin")}, "kind", "identical");
            things.colony.post(owner, "/litters/" + id + "/twins", twins).statusCode(200);
        }
    }

    private void photo(String path, Map<String, String> named) {
        named.put(
                "photo",
                path.contains("/litters/")
                        ? things.litterPhoto(owner, named.get("litter"))
                        : things.photo(owner, named.get("number")));
    }

    /** The keeper of the other record is asked. */
    private String claim(String operation) {
        return switch (operation) {
            case "confirmSameAnimalElsewhere" -> things.claimFromElsewhere(owner);
            case "reverseSameAnimalElsewhere" -> things.claimElsewhere(owner);
            default -> things.claim(third(relation == Relation.OWN ? owner : asker), owner);
        };
    }

    private String transfer(String operation) {
        boolean receives = operation.equals("acceptTransfer") || operation.equals("refuseTransfer");
        if (operation.equals("renewClaimCode")) {
            return things.handOut(owner, things.female(owner)).extract().path("transfer.id");
        }
        return relation == Relation.OWN && receives
                ? things.offer(third(owner), owner, things.female(third(owner)))
                : things.offer(owner, third(asker), things.female(owner));
    }

    private String crossing(String operation) {
        boolean receives = operation.equals("acceptCrossing") || operation.equals("refuseCrossing");
        return receives ? things.offeredFromElsewhere(owner) : things.crossing(owner);
    }

    /** Of others: between the owner and somebody whom no asker is. */
    private String approach(String operation) {
        if (relation != Relation.OWN) {
            return seekers.approach(owner, Colony.OUTSIDER);
        }
        boolean isAsked = operation.equals("agreeToApproach") || operation.equals("refuseApproach");
        return isAsked ? seekers.approach(third(owner), owner) : seekers.approach(owner, third(owner));
    }

    /** Who ends a membership does it in a population of its own. */
    private void leaving(Map<String, String> named) {
        named.put("population", Colony.foundPrivate().code);
        named.put("name", relation == Relation.OWN ? asker : DOV);
    }

    private static String handedOut(String giver) {
        var colony = Colony.foundPrivate();
        return colony.post(
                        giver,
                        "/transfers",
                        Map.of("animal", colony.female(giver), "kind", "sale", "withClaimCode", true))
                .statusCode(201)
                .extract()
                .path("claimCode");
    }

    private static String invitation() {
        return as("administrator")
                .body(Map.of())
                .post("/api/v1/invitations")
                .then()
                .statusCode(200)
                .extract()
                .path("secret");
    }

    private static String calendar() {
        String address = as(WREN).body("{}")
                .post("/api/v1/calendar")
                .then()
                .statusCode(200)
                .extract()
                .path("address");
        return address.replaceFirst(".*/calendars/(.*)\\.ics$", "$1");
    }
}
