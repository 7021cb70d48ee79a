package org.demebook.problem;

import java.util.Locale;

/** Every kind of refusal that the server knows, with its HTTP status and its title; the type URI is {@code /problems/<name>}. */
public enum ProblemType {
    // the request itself
    UNREADABLE_BODY(400, "The body of the request cannot be read"),
    UNKNOWN_FIELD(400, "The request has a field that does not exist"),
    BAD_PARAMETER(400, "A parameter of the address cannot be read"),
    INVALID_VALUES(422, "Some values are missing or not allowed"),
    NOT_SIGNED_IN(401, "You are not signed in"),
    WRONG_SIGN_IN(401, "Name and password do not match"),
    NOT_ALLOWED(403, "This is not yours to do"),
    NO_SUCH_ADDRESS(404, "There is nothing at this address"),
    METHOD_NOT_ALLOWED(405, "This address does not take that method"),
    NOT_ACCEPTABLE(406, "The answer cannot be given in that form"),
    CONFLICT(409, "Somebody else changed the same thing at the same moment"),
    TOO_LARGE(413, "The request is too large"),
    UNSUPPORTED_MEDIA_TYPE(415, "The body has a form that is not taken here"),
    TOO_MANY_REQUESTS(429, "Too many attempts"),
    UNEXPECTED(500, "Something went wrong on the server"),
    UNAVAILABLE(503, "The server cannot answer just now"),
    IDEMPOTENCY_KEY_MISSING(400, "The request needs an Idempotency-Key"),
    IDEMPOTENCY_KEY_REUSED(422, "The Idempotency-Key was used for something else"),
    SHOWN_ONCE(409, "That answer was given once"),
    REVISION_MISSING(428, "The change needs If-Match"),
    REVISION_OUTDATED(412, "It was changed since you read it"),

    // keepers
    NO_SUCH_POPULATION(404, "There is no such population"),
    NO_SUCH_KEEPER(422, "There is no such keeper in this population"),
    NO_SUCH_COLLECTION(422, "There is no such collection of yours"),
    NO_COLLECTION(409, "You have no collection in this population"),
    NO_SUCH_REGION(422, "The population has no such region"),
    REGION_IN_USE(409, "Collections state this region"),
    REGION_NAMES_CLASH(422, "Regions cannot be called so"),
    NAME_TAKEN(409, "That name is taken"),
    WEAK_PASSWORD(422, "The password is too weak"),
    INVITATION_NOT_VALID(404, "This invitation cannot be used"),
    ALREADY_MEMBER(409, "Already a member of this population"),
    NAME_NOT_REPEATED(422, "That is not your sign-in name"),
    LEAVING_IN_THE_WAY(409, "Something has to come to its end before you leave"),
    SIGN_IN_ELSEWHERE(409, "Accounts are kept elsewhere"),

    // consent
    NO_SUCH_GRANT(404, "There is no such grant of yours"),
    GRANT_TO_NOBODY(422, "The grant is given to nobody"),
    GRANT_PERIOD_NOT_POSSIBLE(422, "The grant cannot hold in that time"),
    ANIMAL_NOT_IN_COLLECTION(422, "An animal of the grant is not in the collection"),
    GRANT_ENDED(409, "The grant has come to its end"),

    // registry
    CODE_TAKEN(409, "That population code is taken"),
    NO_SUCH_ANIMAL(404, "There is no such animal"),
    NO_SUCH_PARENT(422, "There is no such parent"),
    MISTYPED_NUMBER(422, "That is not a studbook number"),
    DATE_IN_FUTURE(422, "That day has not come yet"),
    DAM_NOT_FEMALE(422, "The dam is not female"),
    SIRE_NOT_MALE(422, "The sire is not male"),
    OWN_ANCESTOR(422, "An animal cannot be its own ancestor"),
    BORN_BEFORE_PARENT(422, "An animal cannot be born before its parent"),
    DAM_DIED_BEFORE_BIRTH(422, "The dam died before the birth"),
    DAM_TOO_YOUNG(422, "The dam was too young to give birth"),
    SIRE_TOO_YOUNG(422, "The sire was too young"),
    SEX_CONTRADICTS_YOUNG(422, "The sex contradicts the young it has"),
    CONTRADICTORY_PARENTAGE(422, "The parentage contradicts itself"),
    FOUNDER_WITH_PARENTS(422, "A wild-caught animal has no registered parents"),
    DIED_BEFORE_BIRTH(422, "An animal cannot die before it is born"),
    DIED_ALREADY(409, "Another day of death is registered"),
    DEAD_BEFORE_ITS_YOUNG(422, "A dam cannot die before its young are born"),
    INVALID_TRANSPONDER(422, "That is not a transponder number"),
    TRANSPONDER_TAKEN(409, "Another living animal carries this transponder"),
    REFERENCE_TAKEN(409, "You use this reference for another animal"),
    NOT_YOUR_ANIMAL(403, "The animal is not in your collection"),
    ANIMAL_DEAD(409, "The animal is dead"),
    ANIMAL_MERGED(409, "Another number stands for this animal"),
    UNREADABLE_PHOTO(422, "The photograph cannot be used"),
    NO_SUCH_PHOTO(404, "There is no such photograph"),
    NO_SUCH_CLAIM(404, "There is no such claim"),
    CLAIM_NOT_POSSIBLE(422, "These two cannot be one animal"),
    CLAIM_ALREADY_ANSWERED(409, "The claim was answered before"),
    TWINS_NOT_POSSIBLE(422, "These two cannot be twins"),

    // breeding
    NO_SUCH_LITTER(404, "There is no such litter"),
    LITTER_DOES_NOT_ADD_UP(422, "The counts do not add up"),
    LITTER_TOO_SOON(422, "The same dam has a litter too close to this one"),
    NO_SUCH_INTRODUCTION(404, "There is no such introduction"),
    INTRODUCTION_ENDED(409, "The introduction has come to its end"),
    INTRODUCTION_OVERLAPS(422, "The two are recorded together already"),
    NO_SUCH_BREEDING_SIGN(404, "There is no such breeding sign"),
    RECORD_WITHDRAWN(409, "It was withdrawn"),
    NO_SUCH_INCUBATION(404, "There is no such incubation"),
    NOT_EGG_LAYING(409, "The females of this population do not lay"),
    BORN_BEFORE_SHED(422, "The birth lies before the shed that follows an ovulation"),

    // diary
    NO_SUCH_CARE_RECORD(404, "There is no such care record"),
    CARE_RECORD_WITHDRAWN(409, "The care record was withdrawn"),
    CARE_RECORD_HAS_NO_END(422, "That kind of care record has no end"),

    // transfer
    NO_SUCH_TRANSFER(404, "There is no such transfer"),
    ALREADY_IN_TRANSFER(409, "The animal is offered to somebody already"),
    TRANSFER_ENDED(409, "The transfer has come to its end"),
    TRANSFER_TO_YOURSELF(422, "The animal is yours already"),
    NOT_ON_LOAN(422, "The animal is not on loan to you"),
    GRAVID_FEMALE(422, "The female is gravid"),
    ON_LOAN(422, "The animal is on loan to you"),
    CLAIM_CODE_NOT_VALID(404, "This claim code cannot be used"),
    ANIMAL_IN_DISPUTE(409, "The animal is reported in two places"),
    NO_SUCH_DISPUTE(404, "There is no such dispute"),
    DISPUTE_ENDED(409, "The dispute has come to its end"),
    NOTHING_TO_DISPUTE(409, "There is nothing to dispute"),

    // hand-over sheets
    NO_SUCH_HANDOVER_SHEET(404, "There is no such hand-over sheet"),
    HANDOVER_SHEET_ALTERED(409, "The hand-over sheet is not as it was issued"),
    // care, calendar
    NO_SUCH_CARE_TASK(404, "There is no such care task"),
    CARE_TASK_FIXED(422, "The day of this task cannot be moved"),
    CARE_TASK_DONE(409, "The task is done"),
    NO_SUCH_SILENCE(404, "There is no such silence"),
    NO_SUCH_CALENDAR(404, "There is no such calendar"),

    // sheets
    NO_SUCH_IMPORT(404, "There is no such import"),
    UNREADABLE_SHEET(422, "The file cannot be read"),
    IMPORT_RUNNING(409, "An import of yours is still at work"),

    // planning, approaches, programme, census
    NO_CANDIDATES(422, "There is nothing to pair"),
    ON_HOLD(409, "The animal is on hold"),
    NOT_ON_HOLD(409, "The animal is not on hold"),
    TOO_FEW_CONTRIBUTE(409, "Too few keepers contribute"),
    NO_SUCH_PARTNER(422, "No such partner is proposed"),
    ANIMAL_NOT_COMPUTED_WITH(409, "The animal is not granted to be computed with"),
    NO_SUCH_APPROACH(404, "There is no such approach"),
    APPROACHED_ALREADY(409, "That partner is approached already"),
    TOO_MANY_APPROACHES(409, "Too many approaches in a month"),
    APPROACH_ENDED(409, "The approach has come to its end"),
    NO_SUCH_DRAFT(404, "There is no such draft of yours"),
    TOO_MANY_DRAFTS(429, "Too many plans are being computed"),
    DRAFT_NOT_READY(409, "The draft cannot be issued"),
    NO_SUCH_PLAN(404, "There is no such plan"),
    PLAN_NOT_IN_FORCE(409, "Another plan is in force"),
    NO_SUCH_PROPOSAL(404, "The plan proposes no such litter of yours"),
    PLAN_OUTDATED(409, "The plan is not possible any more"),
    PLAN_INPUT_GONE(409, "What the plan was computed with is not here"),
    NO_SUCH_RELEASE(404, "There is no such release"),
    DAY_COUNTED_ALREADY(409, "The counts of that day are released"),
    COUNTS_NOT_SAFE(409, "The counts would tell what a keeper has"),

    // other nodes
    FEDERATION_OFF(409, "This node talks with no other"),
    NO_SUCH_PEER(404, "There is no such node here"),
    PEER_NOT_REACHED(422, "The other node gave no answer that can be used"),
    PEER_KEYS_DIFFER(422, "The other node has other keys than you were told"),
    PEER_IS_THIS_NODE(422, "That is this node itself"),

    // populations shared with them
    NOT_SHARED(404, "The population is not shared with other nodes"),
    ALREADY_SHARED(409, "The population is shared already"),
    NODE_FENCED(503, "This node has not heard yet how far its own journal went"),
    NOT_SAID(409, "This cannot be said to other nodes now"),
    NO_SUCH_NODE(422, "That node takes no part here"),
    SEAT_TAKEN(409, "That seat is taken"),
    NO_SEAT(409, "The founding node has given this node no seat");

    private final int status;
    private final String title;

    ProblemType(int status, String title) {
        this.status = status;
        this.title = title;
    }

    public int status() {
        return status;
    }

    public String title() {
        return title;
    }

    /** The type URI of RFC 9457, relative to the server. */
    public String uri() {
        return "/problems/" + kebab();
    }

    public String kebab() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
