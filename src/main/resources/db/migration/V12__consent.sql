-- ── consent ──────────────────────────────────────────────────────────────────────────────────────────────────────────

-- What a collection lets others see. A row never changes but for its ends; whether it is live follows from them.
create table consent_grant (
    population_id     uuid        not null,
    id                uuid        not null,
    -- for which it is given
    collection_id     uuid        not null,
    given_by          uuid        not null,
    given_at          timestamptz not null,
    recipient         text        not null check (recipient in ('keeper', 'members', 'coordinators', 'public', 'node')),
    recipient_keeper  uuid,
    recipient_node    text,
    -- the animals that it is about; null for whatever the collection has a say in
    animal_ids        uuid[],
    -- varchar: the array operators of Hibernate take no text
    field_groups      varchar[]   not null,
    purposes          varchar[]   not null,
    actions           varchar[]   not null,
    from_at           timestamptz not null,
    until_at          timestamptz not null,
    conditions        text,
    notice_version    text        not null,
    -- the ready choice that it came with, and the grant in whose place it stands
    choice            text check (choice in ('private', 'compute-only', 'pairing-with-members', 'open-pedigree')),
    renews            uuid,
    withdrawn_at      timestamptz,
    withdrawn_by      uuid,
    superseded_at     timestamptz,
    revision          bigint      not null,
    primary key (population_id, id),
    foreign key (population_id, collection_id) references collection (population_id, id),
    check (from_at < until_at),
    check ((recipient = 'keeper') = (recipient_keeper is not null)),
    check ((recipient = 'node') = (recipient_node is not null)),
    check (cardinality(animal_ids) > 0),
    check (cardinality(field_groups) > 0 and cardinality(purposes) > 0 and cardinality(actions) > 0),
    check ((withdrawn_at is null) = (withdrawn_by is null))
);
create index consent_grant_collection on consent_grant (population_id, collection_id);

-- The ready choice that a collection made last; grants written by hand stand beside it.
create table sharing_choice (
    population_id uuid        not null,
    collection_id uuid        not null,
    choice        text        not null check (choice in
                      ('private', 'compute-only', 'pairing-with-members', 'open-pedigree')),
    chosen_by     uuid        not null,
    chosen_at     timestamptz not null,
    revision      bigint      not null,
    primary key (population_id, collection_id),
    foreign key (population_id, collection_id) references collection (population_id, id)
);

grant select, insert, update, delete on consent_grant, sharing_choice to ${app_role};

-- Who saw what on whose grant, added up by day. Written by those who read, who hold no lock on the population: it is in no
-- journal, and only ever grows.
create table disclosure (
    population_id uuid    not null,
    collection_id uuid    not null,
    seen_on       date    not null,
    -- the keeper, or 'public', or 'node' and its code
    seen_by       text    not null,
    grant_id      uuid    not null,
    purpose       text    not null,
    action        text    not null,
    field_group   text    not null,
    -- how often the field group of an animal was given out
    times         bigint  not null check (times > 0),
    primary key (population_id, collection_id, seen_on, seen_by, grant_id, purpose, action, field_group)
);

grant select, insert, update on disclosure to ${app_role};
