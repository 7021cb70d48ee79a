-- The house: every table that belongs to a population is led by population_id, in its primary key, its foreign keys and
-- its indexes. Tables of the node itself (who signs in, answers kept for repeated requests) stand in the second part.
-- Moments are timestamptz; days as keepers know them are EDTF text with the two bounds beside it.

-- ── journal ──────────────────────────────────────────────────────────────────────────────────────────────────────────

create table journal_head (
    population_id uuid   not null,
    code          text   not null,
    node_code     text   not null,
    seq           bigint not null,
    primary key (population_id)
);
create unique index journal_head_code on journal_head (code);

-- Append-only: the application may insert and read, nothing else (see the grants at the end).
create table journal_entry (
    population_id uuid        not null,
    node_code     text        not null,
    seq           bigint      not null,
    recorded_at   timestamptz not null,
    actor_id      uuid        not null,
    type          text        not null,
    body          bytea       not null,
    primary key (population_id, node_code, seq),
    foreign key (population_id) references journal_head (population_id)
);

-- ── keepers in a population ──────────────────────────────────────────────────────────────────────────────────────────

create table membership (
    population_id uuid   not null,
    keeper_id     uuid   not null,
    role          text   not null check (role in ('member', 'coordinator')),
    joined_seq    bigint not null,
    primary key (population_id, keeper_id),
    foreign key (population_id) references journal_head (population_id)
);
create index membership_keeper on membership (keeper_id);

create table collection (
    population_id uuid not null,
    id            uuid not null,
    label         text not null,
    primary key (population_id, id),
    foreign key (population_id) references journal_head (population_id)
);

create table collection_keeper (
    population_id uuid not null,
    collection_id uuid not null,
    keeper_id     uuid not null,
    primary key (population_id, collection_id, keeper_id),
    foreign key (population_id, collection_id) references collection (population_id, id)
);
create index collection_keeper_keeper on collection_keeper (population_id, keeper_id);

-- ── registry ─────────────────────────────────────────────────────────────────────────────────────────────────────────

create table population (
    population_id uuid   not null,
    code          text   not null,
    name          text   not null,
    taxon         text   not null,
    locality      text   not null,
    birth_mode    text   not null check (birth_mode in ('live-bearing', 'egg-laying')),
    profile       text   not null,
    founded_by    uuid   not null,
    revision      bigint not null,
    primary key (population_id),
    foreign key (population_id) references journal_head (population_id)
);

create table serial_counter (
    population_id uuid   not null,
    node_code     text   not null,
    last_serial   bigint not null,
    primary key (population_id, node_code),
    foreign key (population_id) references journal_head (population_id)
);

create table animal (
    population_id       uuid   not null,
    id                  uuid   not null,
    number              text   not null,
    node_code           text   not null,
    serial              bigint not null,
    sex                 text   not null check (sex in ('female', 'male', 'unknown')),
    born                text,
    born_earliest       date,
    born_latest         date,
    died                text,
    died_earliest       date,
    died_latest         date,
    death_cause         text,
    origin              text   not null check (origin in ('wild-caught', 'captive-bred', 'unknown')),
    source_code         text,
    dam_id              uuid,
    sire_kind           text   not null check (sire_kind in ('known', 'unknown', 'candidates', 'none')),
    sire_id             uuid,
    sire_draw_id        uuid,
    fusion              text check (fusion in ('terminal', 'central')),
    second_division     numeric(7, 6),
    litter_id           uuid,
    malformed           boolean not null,
    -- the littermate from the same sac that it was stated to be a twin of, whose number is the earlier
    twin_of_id          uuid,
    twin_kind           text check (twin_kind in ('identical', 'unclear')),
    twin_seq            bigint,
    collection_id       uuid,
    transfer_id         uuid,
    owner_collection_id uuid,
    same_as_id          uuid,
    notes               text,
    registered_by       uuid   not null,
    -- the entries that state what stands here, for those that correct them
    parentage_seq       bigint not null,
    sex_seq             bigint not null,
    description_seq     bigint not null,
    death_seq           bigint,
    revision            bigint not null,
    primary key (population_id, id),
    foreign key (population_id) references journal_head (population_id),
    foreign key (population_id, dam_id) references animal (population_id, id),
    foreign key (population_id, sire_id) references animal (population_id, id),
    foreign key (population_id, same_as_id) references animal (population_id, id),
    foreign key (population_id, twin_of_id) references animal (population_id, id),
    foreign key (population_id, collection_id) references collection (population_id, id),
    foreign key (population_id, owner_collection_id) references collection (population_id, id),
    -- an animal is in exactly one collection, or in exactly one transfer between two
    check ((collection_id is null) <> (transfer_id is null)),
    check ((sire_kind = 'known') = (sire_id is not null)),
    check (dam_id is null or dam_id <> id),
    check (sire_id is null or sire_id <> id),
    check (twin_of_id is null or twin_of_id <> id),
    check ((twin_of_id is null) = (twin_kind is null))
);
-- Each of these is partial, although its column is not null or an absent one is never looked for: the check of a foreign
-- key onto this table is planned while the table is empty, when all indexes seem equal; a partial one cannot be taken for
-- it, so that it takes the primary key. Otherwise a large import compares every animal with every other.
create unique index animal_number on animal (population_id, number) where number is not null;
create unique index animal_serial on animal (population_id, node_code, serial) where serial is not null;
create index animal_dam on animal (population_id, dam_id) where dam_id is not null;
create index animal_sire on animal (population_id, sire_id) where sire_id is not null;
create index animal_collection on animal (population_id, collection_id) where collection_id is not null;
create index animal_litter on animal (population_id, litter_id) where litter_id is not null;
create index animal_twin on animal (population_id, twin_of_id) where twin_of_id is not null;
create index animal_same_as on animal (population_id, same_as_id) where same_as_id is not null;
create index animal_revision on animal (population_id, revision) where revision > 0;

create table candidate_sire (
    population_id uuid          not null,
    animal_id     uuid          not null,
    sire_id       uuid          not null,
    probability   numeric(9, 8) not null check (probability > 0 and probability <= 1),
    primary key (population_id, animal_id, sire_id),
    foreign key (population_id, animal_id) references animal (population_id, id),
    foreign key (population_id, sire_id) references animal (population_id, id)
);
create index candidate_sire_sire on candidate_sire (population_id, sire_id);

create table identifier (
    population_id uuid not null,
    animal_id     uuid not null,
    kind          text not null check (kind in ('transponder', 'mark', 'own-reference')),
    value         text not null,
    collection_id uuid,
    primary key (population_id, animal_id, kind, value),
    foreign key (population_id, animal_id) references animal (population_id, id),
    check ((kind = 'own-reference') = (collection_id is not null))
);
create index identifier_value on identifier (population_id, kind, value);
create unique index identifier_own_reference on identifier (population_id, collection_id, value) where kind = 'own-reference';

create table same_animal_claim (
    population_id uuid   not null,
    id            uuid   not null,
    animal_id     uuid   not null,
    other_id      uuid   not null,
    claimed_by    uuid   not null,
    state         text   not null check (state in ('claimed', 'confirmed', 'reversed')),
    evidence      text,
    revision      bigint not null,
    primary key (population_id, id),
    foreign key (population_id, animal_id) references animal (population_id, id),
    foreign key (population_id, other_id) references animal (population_id, id)
);

create table photo (
    population_id uuid    not null,
    id            uuid    not null,
    animal_id     uuid,
    litter_id     uuid,
    moment        text check (moment in ('before-separation', 'after-separation')),
    sha256        text    not null,
    label         text,
    taken_on      date,
    width_pixels  integer not null,
    height_pixels integer not null,
    added_by      uuid    not null,
    primary key (population_id, id),
    foreign key (population_id, animal_id) references animal (population_id, id),
    check ((animal_id is null) <> (litter_id is null)),
    check ((litter_id is null) = (moment is null))
);
create index photo_animal on photo (population_id, animal_id) where animal_id is not null;
create index photo_litter on photo (population_id, litter_id) where litter_id is not null;

-- The pictures themselves: too large for a journal entry, which holds their digest instead.
create table photo_content (
    population_id uuid  not null,
    sha256        text  not null,
    picture       bytea not null,
    thumbnail     bytea not null,
    primary key (population_id, sha256)
);

-- ── breeding ─────────────────────────────────────────────────────────────────────────────────────────────────────────

create table litter (
    population_id       uuid    not null,
    id                  uuid    not null,
    dam_id              uuid    not null,
    -- what was stated of the sire, in the form of the journal: young found later are registered with it
    sire                text    not null,
    sire_confidence     text check (sire_confidence in ('low')),
    origin              text    not null check (origin in ('wild-caught', 'captive-bred', 'unknown')),
    -- of whoever held the dam at the birth
    collection_id       uuid    not null,
    born                text    not null,
    born_earliest       date,
    born_latest         date,
    live_born           integer not null check (live_born >= 0),
    stillborn           integer not null check (stillborn >= 0),
    part_developed      integer not null check (part_developed >= 0),
    unfertilised        integer not null check (unfertilised >= 0),
    infertile           integer not null check (infertile >= 0),
    early_dead          integer not null check (early_dead >= 0),
    ova_found           integer not null,
    malformed_live      integer not null check (malformed_live between 0 and live_born),
    malformed_stillborn integer not null check (malformed_stillborn between 0 and stillborn),
    notes               text,
    registered_by       uuid    not null,
    revision            bigint  not null,
    primary key (population_id, id),
    foreign key (population_id, dam_id) references animal (population_id, id),
    foreign key (population_id, collection_id) references collection (population_id, id),
    check (infertile + early_dead <= unfertilised),
    check (live_born + stillborn + part_developed + unfertilised = ova_found)
);
create index litter_dam on litter (population_id, dam_id);
create index litter_collection on litter (population_id, collection_id);

-- ── transfer ─────────────────────────────────────────────────────────────────────────────────────────────────────────

create table transfer (
    population_id       uuid        not null,
    id                  uuid        not null,
    animal_id           uuid        not null,
    kind                text        not null check (kind in ('sale', 'gift', 'exchange', 'breeding-loan', 'loan-return')),
    from_collection_id  uuid        not null,
    to_keeper_id        uuid,
    to_collection_id    uuid,
    state               text        not null check (state in
                            ('offered', 'accepted', 'refused', 'withdrawn', 'expired', 'handed-out', 'claimed')),
    offered_by          uuid        not null,
    offered_at          timestamptz not null,
    expires_at          timestamptz not null,
    handed_over_on      date,
    note                text,
    ended_at            timestamptz,
    reason              text,
    revision            bigint      not null,
    primary key (population_id, id),
    foreign key (population_id, animal_id) references animal (population_id, id),
    foreign key (population_id, from_collection_id) references collection (population_id, id),
    foreign key (population_id, to_collection_id) references collection (population_id, id)
);
-- an animal is in at most one open transfer
create unique index transfer_open on transfer (population_id, animal_id) where state in ('offered', 'handed-out');
create index transfer_animal on transfer (population_id, animal_id);
create index transfer_to_keeper on transfer (population_id, to_keeper_id);
create index transfer_from_collection on transfer (population_id, from_collection_id);
create index transfer_due on transfer (population_id, expires_at) where state = 'offered';

alter table animal add foreign key (population_id, transfer_id) references transfer (population_id, id);
alter table animal add foreign key (population_id, litter_id) references litter (population_id, id);
alter table photo add foreign key (population_id, litter_id) references litter (population_id, id);

-- ── sheet: imports ───────────────────────────────────────────────────────────────────────────────────────────────────

create table import_run (
    population_id uuid        not null,
    id            uuid        not null,
    keeper_id     uuid        not null,
    state         text        not null check (state in ('running', 'done', 'refused', 'interrupted')),
    rows_total    integer     not null,
    rows_done     integer     not null,
    animals_added integer     not null,
    already_known integer     not null,
    findings      text        not null,
    started_at    timestamptz not null,
    ended_at      timestamptz,
    primary key (population_id, id),
    foreign key (population_id) references journal_head (population_id)
);
-- one import of a keeper at a time
create unique index import_run_running on import_run (population_id, keeper_id) where state = 'running';

-- ── census ───────────────────────────────────────────────────────────────────────────────────────────────────────────

-- one release for a day: two of the same day could be subtracted from each other
create table count_release (
    population_id uuid        not null,
    counted_on    date        not null,
    released_at   timestamptz not null,
    body          text        not null,
    primary key (population_id, counted_on),
    foreign key (population_id) references journal_head (population_id)
);

-- ── the node itself: who signs in, and answers kept for repeated requests ────────────────────────────────────────────

create table keeper (
    id            uuid        not null,
    name          text        not null,
    full_name     text        not null,
    subject       text        not null,
    administrator boolean     not null,
    joined_at     timestamptz not null,
    primary key (id)
);
create unique index keeper_name on keeper (lower(name));
create unique index keeper_subject on keeper (subject);

create table account (
    keeper_id     uuid not null,
    password_hash text not null,
    primary key (keeper_id),
    foreign key (keeper_id) references keeper (id)
);

create table invitation (
    id            uuid        not null,
    secret_hash   text        not null,
    population_id uuid,
    role          text,
    invited_by    uuid        not null,
    invited_at    timestamptz not null,
    expires_at    timestamptz not null,
    used_at       timestamptz,
    used_by       uuid,
    primary key (id)
);
create unique index invitation_secret on invitation (secret_hash);

-- The secret of an animal that was handed out, as a hash: it is in no journal, and is gone once it was used.
create table claim_code (
    transfer_id   uuid        not null,
    population_id uuid        not null,
    hash          text        not null,
    expires_at    timestamptz not null,
    primary key (transfer_id)
);
create unique index claim_code_hash on claim_code (hash);

create table kept_answer (
    actor_id    uuid        not null,
    key         text        not null,
    fingerprint bytea       not null,
    status      integer     not null,
    location    text,
    etag        text,
    media_type  text,
    body        bytea,
    kept_at     timestamptz not null,
    primary key (actor_id, key)
);
create index kept_answer_kept_at on kept_answer (kept_at);

-- ── what the application's role may do ───────────────────────────────────────────────────────────────────────────────

grant select, insert, update, delete on all tables in schema ${flyway:defaultSchema} to ${app_role};
revoke update, delete on journal_entry from ${app_role};
revoke update, delete on count_release from ${app_role};
