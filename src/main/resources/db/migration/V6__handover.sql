-- ── hand-over sheets ─────────────────────────────────────────────────────────────────────────────────────────────────

create table handover_sheet (
    population_id      uuid        not null,
    id                 uuid        not null,
    animal_id          uuid        not null,
    from_collection_id uuid        not null,
    issued_by          uuid        not null,
    issued_at          timestamptz not null,
    issued_seq         bigint      not null,
    -- the head of the digest, as it stands on the paper
    code               text        not null,
    digest             text        not null,
    withdrawn_at       timestamptz,
    reason             text,
    revision           bigint      not null,
    primary key (population_id, id),
    foreign key (population_id, animal_id) references animal (population_id, id),
    foreign key (population_id, from_collection_id) references collection (population_id, id)
);
create index handover_sheet_animal on handover_sheet (population_id, animal_id);
create index handover_sheet_from_collection on handover_sheet (population_id, from_collection_id);
-- whoever has the paper brings its code and nothing else
create unique index handover_sheet_code on handover_sheet (code);

-- What the sheets say, byte for byte: never changed, and no part of the journal, since a keeper may have asked for their
-- name to be on it.
create table handover_sheet_words (
    population_id uuid  not null,
    sheet_id      uuid  not null,
    words         bytea not null,
    primary key (population_id, sheet_id)
);

grant select, insert, update, delete on handover_sheet to ${app_role};
grant select, insert, delete on handover_sheet_words to ${app_role};
