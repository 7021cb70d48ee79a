-- ── terms of pairing ─────────────────────────────────────────────────────────────────────────────────────────────────

-- What a collection can bear in the coming season, as its keepers state it. Where there is a row, plans count its animals as living
-- together; what is null was not said.
create table pairing_terms (
    population_id       uuid        not null,
    collection_id       uuid        not null,
    -- born there
    litters_at_most     integer,
    -- of the males that live there
    males_away_at_most  integer,
    farthest_kilometres integer,
    may_cross_borders   boolean,
    -- the regions that animals go to and come from, besides its own
    exchange_with       text[],
    notes               text,
    stated_at           timestamptz not null,
    revision            bigint      not null,
    primary key (population_id, collection_id),
    foreign key (population_id, collection_id) references collection (population_id, id)
);
grant select, insert, update, delete on pairing_terms to ${app_role}, ${register_role};

alter table pairing_terms enable row level security;
create policy register on pairing_terms to ${register_role} using ((select everything from asking)) with check ((select everything from asking));
create policy asker on pairing_terms for select to ${app_role} using (
    collection_id in (select collection_id from asking_collection));

-- How far apart the regions of a population are, and between which a border lies; the pairs stand at the same place of the lists.
-- Like the list of regions it tells nothing of who is where.
create table region_distance (
    population_id uuid      not null,
    ones          text[]    not null,
    others        text[]    not null,
    kilometres    integer[] not null,
    borders       boolean[] not null,
    revision      bigint    not null,
    primary key (population_id),
    foreign key (population_id) references journal_head (population_id),
    check (cardinality(ones) = cardinality(others) and cardinality(ones) = cardinality(kilometres)
        and cardinality(ones) = cardinality(borders))
);
grant select, insert, update, delete on region_distance to ${app_role}, ${register_role};
